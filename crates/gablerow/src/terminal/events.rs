//! What arrives from outside, on one channel: keys, pasted text, sizes, signals.
//!
//! ```text
//! keyboard -> input thread  -+
//!                            +-> channel -> main thread, which alone decides
//! kernel   -> signal thread -+       (signals, sizes)
//! ```
//!
//! The input thread never decides to end the program: once a terminal is gone, crossterm reads its
//! end of file for ever and returns no more. The hang-up arrives as a signal, and the main thread
//! ends the program while the input thread still spins.

use std::io;
use std::mem;
use std::sync::mpsc::Sender;
use std::thread;
use std::time::Instant;

use crossterm::event::{self, Event};
use ratatui::layout::Size;
use signal_hook::consts::{SIGCONT, SIGHUP, SIGINT, SIGQUIT, SIGTERM, SIGTSTP, SIGWINCH};
use signal_hook::iterator::Signals;
use signal_hook::low_level::emulate_default_handler;

use super::guard::Hold;
use crate::key::{Key, Press};

/// Something from outside that the program has to answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Incoming {
    /// A key was pressed.
    Press(Press),
    /// Text was pasted, as it was: with line ends and whatever else it held.
    Paste(String),
    /// The terminal has a new size, in columns and rows. The next frame has to be a whole one.
    Resize(Size),
    /// Somebody in the program has news; it is where they said it would be.
    Woken,
    /// The program ran again after it was stopped. The next frame has to be a whole one.
    Continue,
    /// The program is asked to end: save the journal, then leave with [`Ending::exit_code`].
    End(Ending),
    /// No key will arrive any more, and why.
    InputClosed(String),
}

/// Wakes the main thread from another one, when that has news.
#[derive(Clone, Debug)]
pub struct Waker(pub(super) Sender<Incoming>);

impl Waker {
    /// Lets [`Incoming::Woken`] arrive.
    pub fn wake(&self) {
        // Nobody is there to be woken where the program is ending anyway.
        let _ = self.0.send(Incoming::Woken);
    }
}

/// The signal that asks the program to end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// SIGHUP: the terminal was closed or is gone.
    Hangup,
    /// SIGINT: sent from outside; Ctrl-C arrives as a key.
    Interrupt,
    /// SIGQUIT.
    Quit,
    /// SIGTERM: the system shuts down, or somebody asks kindly.
    Terminate,
}

/// Each ending with its signal.
const ENDINGS: [(Ending, i32); 4] = [
    (Ending::Hangup, SIGHUP),
    (Ending::Interrupt, SIGINT),
    (Ending::Quit, SIGQUIT),
    (Ending::Terminate, SIGTERM),
];

impl Ending {
    /// The exit code that tells a shell which signal ended the program: 128 and the signal's number.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow::terminal::Ending;
    ///
    /// assert_eq!(Ending::Terminate.exit_code(), 143); // 128 + 15
    /// ```
    #[must_use]
    pub fn exit_code(self) -> u8 {
        match self {
            Self::Hangup => 129,
            Self::Interrupt => 130,
            Self::Quit => 131,
            Self::Terminate => 143,
        }
    }

    fn of_signal(signal: i32) -> Option<Self> {
        ENDINGS
            .iter()
            .find(|(_, number)| *number == signal)
            .map(|(ending, _)| *ending)
    }
}

/// What a terminal event means to the program, if anything.
fn incoming(event: Event) -> Option<Incoming> {
    match event {
        Event::Key(key) => Key::from_event(key).map(|key| {
            Incoming::Press(Press {
                key,
                at: Instant::now(),
            })
        }),
        Event::Paste(text) => Some(Incoming::Paste(text)),
        // The signal thread tells sizes: it listens before the first frame, and the input thread may not yet.
        Event::Resize(..) | Event::Mouse(_) | Event::FocusGained | Event::FocusLost => None,
    }
}

/// Starts the signal thread. From here on signals no longer end the program by themselves, so it
/// comes before the terminal is taken.
///
/// # Errors
///
/// The system has no more threads, or refuses a signal.
pub(super) fn start_signals(hold: Hold, sender: Sender<Incoming>) -> io::Result<()> {
    let mut numbers = vec![SIGTSTP, SIGCONT, SIGWINCH];
    numbers.extend(ENDINGS.iter().map(|(_, number)| *number));
    let mut signals = Signals::new(numbers)?;
    thread::Builder::new()
        .name("signals".to_owned())
        .spawn(move || {
            for signal in signals.forever() {
                let answer = match signal {
                    SIGTSTP => stop(&hold),
                    SIGCONT => resume(&hold),
                    SIGWINCH => Some(Incoming::Resize(super::size())),
                    ending => Ending::of_signal(ending).map(Incoming::End),
                };
                if answer.is_some_and(|incoming| sender.send(incoming).is_err()) {
                    break;
                }
            }
        })?;
    Ok(())
}

/// Gives the terminal back and stops the whole program; returns once it runs again.
fn stop(hold: &Hold) -> Option<Incoming> {
    let taken = hold.lend(|| {
        // Stopping can fail only for a signal that does not stop, and this one does.
        let _ = emulate_default_handler(SIGTSTP);
    });
    taken.err().map(lost)
}

/// Takes the terminal anew, because whoever had it meanwhile may have left it in any state.
fn resume(hold: &Hold) -> Option<Incoming> {
    Some(hold.take_anew().map_or_else(lost, |()| Incoming::Continue))
}

#[expect(
    clippy::needless_pass_by_value,
    reason = "errors are handed over by value"
)]
fn lost(error: io::Error) -> Incoming {
    Incoming::InputClosed(format!("the terminal could not be taken again: {error}"))
}

/// Starts the input thread, once the terminal is ours.
///
/// # Errors
///
/// The system has no more threads.
pub(super) fn start_input(sender: Sender<Incoming>) -> io::Result<()> {
    let input = Input {
        sender,
        why_closed: "the input thread broke off".to_owned(),
    };
    thread::Builder::new()
        .name("input".to_owned())
        .spawn(move || input.run())?;
    Ok(())
}

/// Reads the terminal, and says so when it ends: even by a panic, hence the drop.
struct Input {
    sender: Sender<Incoming>,
    why_closed: String,
}

impl Input {
    fn run(mut self) {
        loop {
            match event::read() {
                Ok(event) => {
                    if incoming(event).is_some_and(|incoming| self.sender.send(incoming).is_err()) {
                        break;
                    }
                }
                Err(error) => {
                    self.why_closed = format!("the terminal cannot be read: {error}");
                    break;
                }
            }
        }
    }
}

impl Drop for Input {
    fn drop(&mut self) {
        // Nobody listens any more where the program is ending anyway.
        let _ = self
            .sender
            .send(Incoming::InputClosed(mem::take(&mut self.why_closed)));
    }
}

#[cfg(test)]
mod tests {
    use std::sync::mpsc;

    use crossterm::event::{
        KeyCode, KeyEvent, KeyEventKind, KeyModifiers, MouseEvent, MouseEventKind,
    };

    use super::*;

    #[test]
    fn exit_codes_are_128_and_the_signal() {
        for (ending, signal) in ENDINGS {
            assert_eq!(i32::from(ending.exit_code()), 128 + signal, "{ending:?}");
            assert_eq!(Ending::of_signal(signal), Some(ending));
        }
        assert_eq!(Ending::of_signal(SIGCONT), None);
    }

    #[test]
    fn a_press_carries_its_key_and_time() {
        let before = Instant::now();
        let event = Event::Key(KeyEvent::new(KeyCode::Char('h'), KeyModifiers::NONE));
        let Some(Incoming::Press(press)) = incoming(event) else {
            panic!("a press")
        };
        assert_eq!(press.key, Key::Char('h'));
        assert!(press.at >= before && press.at <= Instant::now());
    }

    #[test]
    fn what_means_nothing_does_not_arrive() {
        let release =
            KeyEvent::new_with_kind(KeyCode::Up, KeyModifiers::NONE, KeyEventKind::Release);
        let mouse = MouseEvent {
            kind: MouseEventKind::Moved,
            column: 1,
            row: 1,
            modifiers: KeyModifiers::NONE,
        };
        for event in [
            Event::Key(release),
            Event::Mouse(mouse),
            Event::Resize(100, 30),
            Event::FocusGained,
            Event::FocusLost,
        ] {
            assert_eq!(incoming(event.clone()), None, "{event:?}");
        }
    }

    #[test]
    fn the_end_of_input_is_told_even_after_a_panic() {
        let (sender, receiver) = mpsc::channel();
        let input = Input {
            sender,
            why_closed: "why".to_owned(),
        };
        let broken = std::panic::catch_unwind(std::panic::AssertUnwindSafe(move || {
            let _input = input;
            std::panic::resume_unwind(Box::new(()));
        }));
        assert!(broken.is_err());
        assert_eq!(
            receiver.try_recv(),
            Ok(Incoming::InputClosed("why".to_owned()))
        );
    }
}
