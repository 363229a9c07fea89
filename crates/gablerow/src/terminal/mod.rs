//! The terminal: taken, painted, read, and given back whatever happens.
//!
//! ```text
//!            take            Buffer                    bytes
//! session --------> Guard    -------> Screen/Painter ---------> terminal
//!    |                       safe: no cell commands it             |
//!    |   body(screen, incoming)                                    | keys, size
//!    |        ^                                                    v
//!    |        +---- Incoming ---- channel <---- input thread, signal thread
//!    v
//! exit code, after the terminal was given back
//! ```
//!
//! Nothing here knows what the program is about.

mod events;
mod guard;
mod painter;
mod picture;
mod safe;

use std::env;
use std::io::{self, IsTerminal};
use std::sync::mpsc::{self, Receiver};
use std::time::{Duration, Instant};

use anyhow::Context;
use ratatui::buffer::Buffer;
use ratatui::layout::{Rect, Size};

pub use events::{Ending, Incoming, Waker};
pub use painter::Painter;
pub use picture::buffer_to_svg;
pub use safe::is_shown;

use crate::theme::Charset;
use guard::{Guard, HeldOutput, Hold};

/// The size of a terminal that does not know its own: the size of the first ones.
const SIZE_UNKNOWN: Size = Size {
    width: 80,
    height: 24,
};

/// Whether a screen can be drawn: standard input and output are one terminal that can move its
/// cursor. Where it is `false`, the program shows itself as text.
#[must_use]
pub fn is_terminal() -> bool {
    let term = env::var("TERM").unwrap_or_default();
    can_draw(io::stdin().is_terminal(), io::stdout().is_terminal(), &term)
}

/// A terminal that is `dumb`, or does not say what it is, cannot move its cursor.
fn can_draw(stdin_is_terminal: bool, stdout_is_terminal: bool, term: &str) -> bool {
    stdin_is_terminal && stdout_is_terminal && !term.is_empty() && term != "dumb"
}

/// The terminal's size now.
fn size() -> Size {
    crossterm::terminal::size().map_or(SIZE_UNKNOWN, |(width, height)| {
        usable(Size { width, height })
    })
}

/// A size with cells in it: a terminal that says 0 does not know.
fn usable(size: Size) -> Size {
    if size.width == 0 || size.height == 0 {
        SIZE_UNKNOWN
    } else {
        size
    }
}

/// The terminal while it is ours.
#[derive(Debug)]
pub struct Screen {
    painter: Painter<HeldOutput>,
    waker: Waker,
    _guard: Guard,
}

impl Screen {
    /// The terminal's size now, in columns and rows; never 0. 80 x 24 where it does not know.
    #[must_use]
    pub fn size(&self) -> Size {
        size()
    }

    /// What wakes whoever waits for what arrives.
    #[must_use]
    pub fn waker(&self) -> Waker {
        self.waker.clone()
    }

    /// An empty frame of the terminal's size.
    #[must_use]
    pub fn frame(&self) -> Buffer {
        let Size { width, height } = self.size();
        Buffer::empty(Rect {
            x: 0,
            y: 0,
            width,
            height,
        })
    }

    /// Shows a frame: one write, or none where it is the one shown already.
    ///
    /// # Errors
    ///
    /// The terminal does not take it. With the terminal gone, [`Ending::Hangup`] arrives as well.
    pub fn paint(&mut self, frame: Buffer) -> io::Result<()> {
        self.painter.paint(frame)
    }

    /// Makes the next frame a whole one: after [`Incoming::Resize`] and [`Incoming::Continue`].
    pub fn repaint(&mut self) {
        self.painter.repaint();
    }
}

/// Takes the terminal, runs the program's loop, gives the terminal back; returns the loop's exit code.
///
/// The terminal is given back however `body` ends: by returning, by an error, by a panic, whose
/// message is then printed to the restored terminal. Signals that ask the program to end arrive
/// as [`Incoming::End`]; the body returns [`Ending::exit_code`] once its work is safe.
///
/// Once in a process: the input thread stays until the process ends.
///
/// # Errors
///
/// - the terminal cannot be taken, or a thread cannot be started;
/// - `body` returns an error.
///
/// # Example
///
/// ```no_run
/// use gablerow::terminal::{self, Incoming};
/// use gablerow::theme::Charset;
///
/// let code = terminal::session(Charset::Unicode, |screen, incoming| {
///     loop {
///         let mut frame = screen.frame();
///         frame.set_string(0, 0, "any key ends this", ratatui::style::Style::new());
///         if let Err(gone) = screen.paint(frame) {
///             return terminal::lost(incoming, gone);
///         }
///         match incoming.recv()? {
///             Incoming::Press(_) => return Ok(0),
///             Incoming::End(ending) => return Ok(ending.exit_code()),
///             Incoming::Resize(_) | Incoming::Continue => screen.repaint(),
///             Incoming::Paste(_) | Incoming::Woken => {}
///             Incoming::InputClosed(why) => anyhow::bail!(why),
///         }
///     }
/// })?;
/// # anyhow::Ok(())
/// ```
pub fn session(
    charset: Charset,
    body: impl FnOnce(&mut Screen, &Receiver<Incoming>) -> anyhow::Result<u8>,
) -> anyhow::Result<u8> {
    let hold = Hold::new();
    let (sender, incoming) = mpsc::channel();
    events::start_signals(hold.clone(), sender.clone()).context("signals cannot be received")?;
    let guard = Guard::enter(hold.clone()).context("the terminal cannot be used as a screen")?;
    let mut screen = Screen {
        painter: Painter::new(HeldOutput(hold), charset),
        waker: Waker(sender.clone()),
        _guard: guard,
    };
    events::start_input(sender).context("keys cannot be received")?;
    body(&mut screen, &incoming)
}

/// How long the news of a hang-up may take once the terminal is gone.
const HANGUP_NEWS: Duration = Duration::from_secs(1);

/// How the program ends when the terminal can no longer be painted or read: a terminal that is gone is a hang-up, whose signal
/// may arrive a moment after the first write that failed.
///
/// # Errors
///
/// The terminal is still there, or nobody says otherwise: then `error` is the reason.
pub fn lost(incoming: &Receiver<Incoming>, error: impl Into<anyhow::Error>) -> anyhow::Result<u8> {
    let deadline = Instant::now() + HANGUP_NEWS;
    while let Ok(news) = incoming.recv_timeout(deadline.saturating_duration_since(Instant::now())) {
        if let Incoming::End(ending) = news {
            return Ok(ending.exit_code());
        }
    }
    Err(error.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_screen_needs_a_terminal_on_both_sides_that_moves_its_cursor() {
        assert!(can_draw(true, true, "xterm-256color"));
        assert!(can_draw(true, true, "linux"));
        assert!(!can_draw(false, true, "xterm"));
        assert!(!can_draw(true, false, "xterm"));
        assert!(!can_draw(true, true, "dumb"));
        assert!(!can_draw(true, true, ""));
    }

    #[test]
    fn a_size_of_nothing_is_80_by_24() {
        for size in [Size::new(0, 0), Size::new(0, 24), Size::new(80, 0)] {
            assert_eq!(usable(size), SIZE_UNKNOWN);
        }
        assert_eq!(usable(Size::new(1, 1)), Size::new(1, 1));
    }
}
