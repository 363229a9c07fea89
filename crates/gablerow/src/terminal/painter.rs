//! Paints frames: what changed, in one write, and nothing at all when nothing changed.

use std::io::{self, Write};

use crossterm::cursor::Hide;
use crossterm::queue;
use crossterm::style::ResetColor;
use crossterm::terminal::{BeginSynchronizedUpdate, Clear, ClearType, EndSynchronizedUpdate};
use ratatui::backend::{Backend, CrosstermBackend};
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::safe;
use crate::theme::Charset;

/// Room for a full frame of an ordinary screen, so that the frame is put together without growing.
const FRAME_BYTES: usize = 64 * 1024;

/// Paints whole frames to a terminal and remembers the last one.
///
/// It never asks the terminal anything: the answer would arrive among the keys.
#[derive(Debug)]
pub struct Painter<W: Write> {
    writer: W,
    charset: Charset,
    /// What the terminal shows now; `None` where that is not known.
    shown: Option<Buffer>,
    /// The bytes of the frame being put together; kept for its room.
    frame: Vec<u8>,
}

impl<W: Write> Painter<W> {
    /// A painter onto a terminal of which nothing is known yet: the first frame is painted whole.
    pub fn new(writer: W, charset: Charset) -> Self {
        Self {
            writer,
            charset,
            shown: None,
            frame: Vec::with_capacity(FRAME_BYTES),
        }
    }

    /// Makes the next frame a whole one, because the terminal may no longer show the last one:
    /// its size changed, or another program wrote to it.
    pub fn repaint(&mut self) {
        self.shown = None;
    }

    /// Brings the terminal from the last frame to this one: one write, or none where both are equal.
    ///
    /// The frame's top left cell is the terminal's. A frame of another area than the last is
    /// painted whole. A cell that could command the terminal shows a stand-in instead.
    ///
    /// # Errors
    ///
    /// The terminal does not take the bytes. The next frame is then painted whole.
    pub fn paint(&mut self, mut next: Buffer) -> io::Result<()> {
        safe::make_safe(&mut next, self.charset);
        // Taken out, so that a failed write leaves `None` behind: then nobody knows what is shown.
        let known = self.shown.take().filter(|shown| shown.area == next.area);
        self.frame.clear();
        queue!(self.frame, BeginSynchronizedUpdate)?;
        let changed = if let Some(shown) = &known {
            put(&mut self.frame, shown, &next)?
        } else {
            // The colours are reset first, because clearing fills with the ground in force.
            queue!(self.frame, ResetColor, Hide, Clear(ClearType::All))?;
            put(&mut self.frame, &Buffer::empty(next.area), &next)?;
            true
        };
        if changed {
            queue!(self.frame, EndSynchronizedUpdate)?;
            self.writer.write_all(&self.frame)?;
            self.writer.flush()?;
        }
        self.shown = Some(next);
        Ok(())
    }

    /// The area of the last frame painted, if the terminal still shows it.
    #[must_use]
    pub fn shown_area(&self) -> Option<Rect> {
        self.shown.as_ref().map(|shown| shown.area)
    }
}

/// Adds the bytes that turn one frame into the other; `false` where there are none to add.
fn put(frame: &mut Vec<u8>, from: &Buffer, to: &Buffer) -> io::Result<bool> {
    let mut changes = from.diff_iter(to).peekable();
    if changes.peek().is_none() {
        return Ok(false);
    }
    CrosstermBackend::new(frame).draw(changes)?;
    Ok(true)
}

#[cfg(test)]
mod tests {
    use ratatui::style::{Color, Modifier, Style};

    use super::*;

    /// A terminal that keeps each write apart, and fails on demand.
    #[derive(Default)]
    struct Writes {
        writes: Vec<Vec<u8>>,
        broken: bool,
    }

    impl Write for Writes {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            if self.broken {
                return Err(io::ErrorKind::BrokenPipe.into());
            }
            self.writes.push(bytes.to_vec());
            Ok(bytes.len())
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    fn painter() -> Painter<Writes> {
        Painter::new(Writes::default(), Charset::Unicode)
    }

    fn frame(lines: &[&str]) -> Buffer {
        Buffer::with_lines(lines.iter().copied())
    }

    /// A terminal of the frame's size after it read all that was written.
    fn screen(painter: &Painter<Writes>, columns: u16, rows: u16) -> vt100::Parser {
        let size = |n: u16| n.try_into().unwrap();
        let mut parser = vt100::Parser::new(size(rows), size(columns), 0);
        for bytes in &painter.writer.writes {
            parser.process(bytes);
        }
        parser
    }

    #[test]
    fn a_frame_is_one_synchronized_write() {
        let mut painter = painter();
        painter.paint(frame(&["side", "left"])).unwrap();
        painter.paint(frame(&["side", "lift"])).unwrap();
        assert_eq!(painter.writer.writes.len(), 2);
        for write in &painter.writer.writes {
            assert!(write.starts_with(b"\x1b[?2026h"), "{write:?}");
            assert!(write.ends_with(b"\x1b[?2026l"), "{write:?}");
        }
        assert_eq!(screen(&painter, 4, 2).screen().contents(), "side\nlift");
    }

    #[test]
    fn a_frame_larger_than_the_room_is_still_one_write() {
        let mut painter = painter();
        let mut next = Buffer::empty(Rect::new(0, 0, 300, 120));
        for (index, cell) in next.content.iter_mut().enumerate() {
            let shade = u8::try_from(index % 251).unwrap();
            cell.set_char('x').set_fg(Color::Rgb(shade, 0, 0));
        }
        painter.paint(next).unwrap();
        assert_eq!(painter.writer.writes.len(), 1);
        assert!(painter.writer.writes[0].len() > FRAME_BYTES);
    }

    #[test]
    fn the_same_frame_twice_writes_nothing() {
        let mut painter = painter();
        painter.paint(frame(&["side"])).unwrap();
        painter.paint(frame(&["side"])).unwrap();
        assert_eq!(painter.writer.writes.len(), 1);
    }

    #[test]
    fn a_change_of_style_alone_is_painted() {
        let mut painter = painter();
        painter.paint(frame(&["side"])).unwrap();
        let mut next = frame(&["side"]);
        next.set_style(
            Rect::new(1, 0, 1, 1),
            Style::new().add_modifier(Modifier::REVERSED),
        );
        painter.paint(next).unwrap();
        assert_eq!(painter.writer.writes.len(), 2);
        let parser = screen(&painter, 4, 1);
        let reversed: Vec<bool> = (0..4)
            .map(|x| parser.screen().cell(0, x).unwrap().inverse())
            .collect();
        assert_eq!(reversed, [false, true, false, false]);
    }

    #[test]
    fn a_repaint_brings_back_the_whole_frame_and_asks_nothing() {
        let mut painter = painter();
        painter.paint(frame(&["side"])).unwrap();
        painter.writer.writes.push(b"\x1b[H\x1b[41mjunk".to_vec());
        painter.repaint();
        painter.paint(frame(&["side"])).unwrap();
        assert_eq!(painter.writer.writes.len(), 3);
        let parser = screen(&painter, 4, 1);
        assert_eq!(parser.screen().contents(), "side");
        assert_eq!(
            parser.screen().cell(0, 0).unwrap().bgcolor(),
            vt100::Color::Default
        );
        let asks = painter
            .writer
            .writes
            .concat()
            .windows(4)
            .any(|bytes| bytes == b"\x1b[6n");
        assert!(!asks);
    }

    #[test]
    fn a_frame_of_another_size_is_painted_whole() {
        let mut painter = painter();
        painter.paint(frame(&["side"])).unwrap();
        painter.paint(frame(&["side", "left"])).unwrap();
        assert_eq!(painter.shown_area(), Some(Rect::new(0, 0, 4, 2)));
        assert_eq!(screen(&painter, 4, 2).screen().contents(), "side\nleft");
    }

    #[test]
    fn an_empty_frame_is_painted_without_fuss() {
        let mut painter = painter();
        painter.paint(Buffer::empty(Rect::ZERO)).unwrap();
        painter.paint(Buffer::empty(Rect::ZERO)).unwrap();
        assert_eq!(painter.writer.writes.len(), 1);
    }

    #[test]
    fn the_cursor_is_hidden() {
        let mut painter = painter();
        painter.paint(frame(&["side"])).unwrap();
        assert!(screen(&painter, 4, 1).screen().hide_cursor());
    }

    #[test]
    fn a_cell_cannot_command_the_terminal() {
        let mut painter = painter();
        let mut next = frame(&["side"]);
        next[(1, 0)].set_symbol("\x1b[2J");
        painter.paint(next).unwrap();
        assert_eq!(screen(&painter, 4, 1).screen().contents(), "s▯de");
    }

    #[test]
    fn after_a_failed_write_the_next_frame_is_whole() {
        let mut painter = painter();
        painter.paint(frame(&["side"])).unwrap();
        painter.writer.broken = true;
        painter.paint(frame(&["sift"])).unwrap_err();
        assert_eq!(painter.shown_area(), None);
        painter.writer.broken = false;
        painter.writer.writes.clear();
        painter.paint(frame(&["sift"])).unwrap();
        assert_eq!(screen(&painter, 4, 1).screen().contents(), "sift");
    }
}
