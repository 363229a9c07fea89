//! Takes the terminal and gives it back: on leaving, on a panic, before a stop.

use std::io::{self, Write};
use std::panic;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use crossterm::cursor::{Hide, Show};
use crossterm::event::{DisableBracketedPaste, EnableBracketedPaste};
use crossterm::execute;
use crossterm::style::{ResetColor, force_color_output};
use crossterm::terminal::{
    EnterAlternateScreen, LeaveAlternateScreen, disable_raw_mode, enable_raw_mode,
};

/// Whether the terminal is ours: raw, on the alternate screen, with bracketed paste and no cursor.
///
/// Shared by all who may have to give it back: the guard, the panic hook, the signal thread. Each
/// step holds the lock of the standard output, so that no frame is written while it is not ours.
#[derive(Clone, Debug)]
pub(super) struct Hold(Arc<AtomicBool>);

impl Hold {
    pub(super) fn new() -> Self {
        Self(Arc::new(AtomicBool::new(false)))
    }

    /// Whether the terminal is ours now.
    pub(super) fn is_held(&self) -> bool {
        self.0.load(Ordering::SeqCst)
    }

    /// Takes the terminal.
    ///
    /// # Errors
    ///
    /// The terminal refuses raw mode, or does not take the bytes; it is given back then.
    fn take(&self) -> io::Result<()> {
        let mut out = io::stdout().lock();
        enable_raw_mode()?;
        self.0.store(true, Ordering::SeqCst);
        let entered = execute!(out, EnterAlternateScreen, EnableBracketedPaste, Hide);
        entered.inspect_err(|_| self.give_back())
    }

    /// Gives the terminal back, once however often it is called.
    ///
    /// Errors are passed over: with the terminal gone there is nobody to tell, and printing them
    /// would panic inside the panic hook.
    pub(super) fn give_back(&self) {
        let mut out = io::stdout().lock();
        if self.0.swap(false, Ordering::SeqCst) {
            let _ = execute!(
                out,
                ResetColor,
                DisableBracketedPaste,
                LeaveAlternateScreen,
                Show
            );
            let _ = disable_raw_mode();
        }
    }

    /// Gives the terminal back while `meanwhile` runs, then takes it again. Frames wait until then.
    ///
    /// Does nothing but run `meanwhile` where the terminal is not ours.
    ///
    /// # Errors
    ///
    /// Those of taking it again.
    pub(super) fn lend(&self, meanwhile: impl FnOnce()) -> io::Result<()> {
        let _frames_wait = io::stdout().lock();
        let held = self.is_held();
        self.give_back();
        meanwhile();
        if held { self.take() } else { Ok(()) }
    }

    /// Takes the terminal once more, if it is ours: another program may have changed its modes.
    ///
    /// # Errors
    ///
    /// Those of taking it.
    pub(super) fn take_anew(&self) -> io::Result<()> {
        let _frames_wait = io::stdout().lock();
        if !self.is_held() {
            return Ok(());
        }
        // Raw mode that crossterm believes to be on is not set again unless it was left before.
        disable_raw_mode()?;
        self.take()
    }
}

/// Holds the terminal until it is dropped.
#[derive(Debug)]
pub(super) struct Guard(Hold);

impl Guard {
    /// Takes the terminal, and sees to it that a panic in any thread gives it back before its
    /// message is printed.
    ///
    /// # Errors
    ///
    /// The terminal refuses raw mode, or does not take the bytes.
    pub(super) fn enter(hold: Hold) -> io::Result<Self> {
        // Otherwise crossterm itself heeds NO_COLOR, and by resetting colours it resets bold and
        // reversed as well. The theme heeds it.
        force_color_output(true);
        let hold_of_hook = hold.clone();
        let hook_before = panic::take_hook();
        panic::set_hook(Box::new(move |panic| {
            hold_of_hook.give_back();
            hook_before(panic);
        }));
        hold.take()?;
        Ok(Self(hold))
    }
}

impl Drop for Guard {
    fn drop(&mut self) {
        self.0.give_back();
    }
}

/// The standard output while the terminal is ours; afterwards everything written to it is dropped,
/// so that no late frame lands in the shell.
#[derive(Debug)]
pub(super) struct HeldOutput(pub(super) Hold);

impl Write for HeldOutput {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut out = io::stdout().lock();
        if self.0.is_held() {
            out.write(bytes)
        } else {
            Ok(bytes.len())
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        io::stdout().lock().flush()
    }
}
