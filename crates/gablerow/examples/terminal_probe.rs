//! The smallest program on `gablerow::terminal`: shows what arrives, and fails in any way asked for.
//!
//! The tests of the terminal drive it. `q` ends it, `e` by an error, `p` by a panic, `t` by a
//! panic in another thread; `h` writes a hostile cell.

use std::env;
use std::io::{self, Write};
use std::process::ExitCode;
use std::sync::mpsc::Receiver;
use std::thread;

use gablerow::key::Key;
use gablerow::terminal::{self, Incoming, Screen};
use gablerow::theme::{Role, Theme};
use ratatui::buffer::Buffer;

fn main() -> anyhow::Result<ExitCode> {
    if !terminal::is_terminal() {
        writeln!(io::stdout(), "no terminal to draw on")?;
        return Ok(ExitCode::from(2));
    }
    let theme = Theme::of(|name| env::var(name).ok());
    let code = terminal::session(theme.charset(), |screen, incoming| {
        run(screen, incoming, &theme)
    })?;
    Ok(ExitCode::from(code))
}

fn run(screen: &mut Screen, incoming: &Receiver<Incoming>, theme: &Theme) -> anyhow::Result<u8> {
    let mut last = "nothing".to_owned();
    loop {
        if let Err(gone) = screen.paint(view(screen.frame(), theme, &last)) {
            return terminal::lost(incoming, gone);
        }
        match incoming.recv()? {
            Incoming::Press(press) => match press.key {
                Key::Char('q') => return Ok(0),
                Key::Char('e') => anyhow::bail!("asked to fail"),
                Key::Char('p') => panic!("asked to panic"),
                Key::Char('t') => {
                    let broken = thread::spawn(|| panic!("asked to panic elsewhere")).join();
                    anyhow::ensure!(broken.is_ok(), "a thread panicked");
                }
                Key::Char('h') => "\u{1b}[31mhostile".clone_into(&mut last),
                key => last = format!("key {key}"),
            },
            Incoming::Paste(text) => last = format!("paste {text:?}"),
            Incoming::Woken => {}
            Incoming::Resize(_) => screen.repaint(),
            Incoming::Continue => {
                screen.repaint();
                "continued".clone_into(&mut last);
            }
            Incoming::End(ending) => return Ok(ending.exit_code()),
            Incoming::InputClosed(why) => return terminal::lost(incoming, anyhow::anyhow!(why)),
        }
    }
}

/// Title, size and what arrived last, each on a line of its own.
fn view(mut frame: Buffer, theme: &Theme, last: &str) -> Buffer {
    frame.set_style(frame.area, theme.style(Role::Plain));
    let size = format!("size {} x {}", frame.area.width, frame.area.height);
    let lines = [
        ("probe", Role::Title),
        (&size, Role::Cursor),
        (last, Role::Plain),
    ];
    for ((text, role), y) in lines.into_iter().zip(frame.area.rows().map(|row| row.y)) {
        // Cell by cell, because a line of text would drop what must not reach the terminal.
        for (c, x) in text
            .chars()
            .zip(frame.area.columns().map(|column| column.x))
        {
            frame[(x, y)].set_char(c).set_style(theme.style(role));
        }
    }
    frame
}
