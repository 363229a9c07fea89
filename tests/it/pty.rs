//! A real program in a pseudo-terminal: keys in, a screen out.
//!
//! Nothing here sleeps to be on the safe side. A test waits, with a deadline, until the screen
//! shows what it expects.

use std::env;
use std::ffi::OsStr;
use std::io::{Read, Write};
use std::num::NonZeroU16;
use std::path::Path;
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::{Duration, Instant};

use portable_pty::{Child, CommandBuilder, ExitStatus, MasterPty, PtySize, native_pty_system};
use rustix::process::{Pid, Signal, WaitOptions, kill_process, waitpid};
use tempfile::TempDir;

/// How long a program may take for what a test waits for: far longer than it ever does.
const PATIENCE: Duration = Duration::from_secs(10);

/// How often to look whether a program has ended; the system has no wait with a deadline.
const LOOK: Duration = Duration::from_millis(2);

/// What a terminal sends for keys that are no characters.
pub(crate) mod keys {
    pub(crate) const UP: &str = "\x1b[A";
    pub(crate) const DOWN: &str = "\x1b[B";
    pub(crate) const RIGHT: &str = "\x1b[C";
    pub(crate) const LEFT: &str = "\x1b[D";
    pub(crate) const HOME: &str = "\x1b[H";
    pub(crate) const END: &str = "\x1b[F";
    pub(crate) const PAGE_UP: &str = "\x1b[5~";
    pub(crate) const PAGE_DOWN: &str = "\x1b[6~";
    pub(crate) const DELETE: &str = "\x1b[3~";
    pub(crate) const BACKSPACE: &str = "\x7f";
    pub(crate) const ENTER: &str = "\r";
    pub(crate) const TAB: &str = "\t";
    pub(crate) const BACK_TAB: &str = "\x1b[Z";
    /// Wait for its effect before the next key: together they would be one Alt chord.
    pub(crate) const ESC: &str = "\x1b";
    pub(crate) const CTRL_C: &str = "\x03";
}

/// A program about to be started, in an environment that is the same on every machine.
pub(crate) struct Program {
    command: CommandBuilder,
    columns: u16,
    rows: u16,
}

impl Program {
    /// A program for 80 x 24 cells with 256 colours, UTF-8 and nothing else in its environment.
    pub(crate) fn new(path: &Path) -> Self {
        let mut command = CommandBuilder::new(path);
        command.env_clear();
        command.env("TERM", "xterm-256color");
        command.env("LANG", "C.UTF-8");
        // Without it the coverage of the program's own run would be lost.
        if let Some(profile) = env::var_os("LLVM_PROFILE_FILE") {
            command.env("LLVM_PROFILE_FILE", profile);
        }
        let program = Self {
            command,
            columns: 80,
            rows: 24,
        };
        // Left alone, a program in a pseudo-terminal would start in the home folder.
        program.folder(&env::current_dir().unwrap())
    }

    pub(crate) fn argument(mut self, argument: impl AsRef<OsStr>) -> Self {
        self.command.arg(argument);
        self
    }

    /// Sets a variable; an empty value stays set.
    pub(crate) fn variable(mut self, name: &str, value: &str) -> Self {
        self.command.env(name, value);
        self
    }

    pub(crate) fn without_variable(mut self, name: &str) -> Self {
        self.command.env_remove(name);
        self
    }

    pub(crate) fn folder(mut self, folder: &Path) -> Self {
        self.command.cwd(folder);
        self
    }

    pub(crate) fn size(mut self, columns: u16, rows: u16) -> Self {
        (self.columns, self.rows) = (columns, rows);
        self
    }

    pub(crate) fn start(self) -> Session {
        Session::start(self)
    }
}

/// What the terminal has received so far.
struct Received {
    parser: vt100::Parser,
    bytes: Vec<u8>,
    at_end: bool,
    /// The reader shall stop, so that its handle on the terminal closes.
    hanging_up: bool,
}

/// [`Received`], and a bell that rings when it grows.
struct Inbox {
    received: Mutex<Received>,
    grown: Condvar,
}

impl Inbox {
    fn lock(&self) -> MutexGuard<'_, Received> {
        // A test that failed while it looked has broken nothing.
        self.received.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn read_from(&self, mut terminal: Box<dyn Read + Send>) {
        let mut chunk = [0; 4096];
        loop {
            // At a hang-up Linux reports an error where others report the end.
            let count = terminal.read(&mut chunk).unwrap_or(0);
            let mut received = self.lock();
            received.bytes.extend_from_slice(&chunk[..count]);
            received.parser.process(&chunk[..count]);
            received.at_end = count == 0 || received.hanging_up;
            let at_end = received.at_end;
            drop(received);
            self.grown.notify_all();
            if at_end {
                break;
            }
        }
    }
}

/// A program running in a pseudo-terminal. Dropped, it is killed.
pub(crate) struct Session {
    child: Box<dyn Child + Send + Sync>,
    /// Our end of the terminal; `None` once it is closed.
    master: Option<Box<dyn MasterPty + Send>>,
    keyboard: Option<Box<dyn Write + Send>>,
    inbox: Arc<Inbox>,
    reader: Option<JoinHandle<()>>,
    modes_before: String,
    /// Where the program works, when that is to last no longer than the session.
    folder: Option<TempDir>,
}

/// How a program ended, and all it wrote.
pub(crate) struct Ended {
    pub(crate) status: ExitStatus,
    pub(crate) bytes: Vec<u8>,
    pub(crate) screen: vt100::Screen,
    /// The terminal's modes were as before the program, when it had ended.
    pub(crate) modes_restored: bool,
}

/// A size as the emulator takes it, rows first; 80 x 24 for a terminal that does not know its own.
fn cells(columns: u16, rows: u16) -> (NonZeroU16, NonZeroU16) {
    let known = |count, otherwise| {
        NonZeroU16::new(count)
            .or(NonZeroU16::new(otherwise))
            .unwrap()
    };
    (known(rows, 24), known(columns, 80))
}

fn pty_size(columns: u16, rows: u16) -> PtySize {
    PtySize {
        rows,
        cols: columns,
        pixel_width: 0,
        pixel_height: 0,
    }
}

/// The terminal's modes as text, which serves to compare them.
fn modes(master: &dyn MasterPty) -> String {
    format!("{:?}", master.get_termios().unwrap())
}

impl Session {
    /// The same with the folder it works in, which goes when the session does: a program whose folder is gone complains.
    pub(crate) fn keeping(mut self, folder: TempDir) -> Self {
        self.folder = Some(folder);
        self
    }

    fn start(program: Program) -> Self {
        let pty = native_pty_system()
            .openpty(pty_size(program.columns, program.rows))
            .unwrap();
        let modes_before = modes(&*pty.master);
        let child = pty.slave.spawn_command(program.command).unwrap();
        // Our own handle would keep the terminal open after the program's end.
        drop(pty.slave);
        let (rows, columns) = cells(program.columns, program.rows);
        let inbox = Arc::new(Inbox {
            received: Mutex::new(Received {
                parser: vt100::Parser::new(rows, columns, 0),
                bytes: Vec::new(),
                at_end: false,
                hanging_up: false,
            }),
            grown: Condvar::new(),
        });
        let terminal = pty.master.try_clone_reader().unwrap();
        let keyboard = Some(pty.master.take_writer().unwrap());
        let reader_inbox = Arc::clone(&inbox);
        let reader = Some(thread::spawn(move || reader_inbox.read_from(terminal)));
        Self {
            child,
            master: Some(pty.master),
            keyboard,
            inbox,
            reader,
            modes_before,
            folder: None,
        }
    }

    /// Types; see [`keys`] for what is no character.
    pub(crate) fn send(&mut self, keys: &str) {
        self.send_bytes(keys.as_bytes());
    }

    /// Sends bytes as they are, which need not be text.
    pub(crate) fn send_bytes(&mut self, bytes: &[u8]) {
        let keyboard = self.keyboard.as_mut().unwrap();
        keyboard.write_all(bytes).unwrap();
        keyboard.flush().unwrap();
    }

    /// Pastes, as a terminal with bracketed paste does.
    pub(crate) fn paste(&mut self, text: &str) {
        self.send(&format!("\x1b[200~{text}\x1b[201~"));
    }

    /// Waits until the screen answers a question; panics with the screen when time is up.
    pub(crate) fn wait<T>(&self, what: &str, question: impl Fn(&vt100::Screen) -> Option<T>) -> T {
        self.wait_received(what, |received| {
            let answer = question(received.parser.screen());
            assert!(
                answer.is_some() || !received.at_end,
                "the program ended before: {what}\n{}",
                received.parser.screen().contents()
            );
            answer
        })
    }

    /// Waits until what was received answers a question.
    fn wait_received<T>(&self, what: &str, question: impl Fn(&Received) -> Option<T>) -> T {
        let deadline = Instant::now() + PATIENCE;
        let mut received = self.inbox.lock();
        loop {
            if let Some(answer) = question(&received) {
                return answer;
            }
            let left = deadline.saturating_duration_since(Instant::now());
            let screen = received.parser.screen().contents();
            assert!(!left.is_zero(), "no time left for: {what}\n{screen}");
            received = self.inbox.grown.wait_timeout(received, left).unwrap().0;
        }
    }

    /// Waits until some text is on the screen.
    pub(crate) fn wait_text(&self, text: &str) {
        self.wait(&format!("{text:?} on the screen"), |screen| {
            screen.contents().contains(text).then_some(())
        });
    }

    /// Waits until some text is on the screen no more.
    pub(crate) fn wait_gone(&self, text: &str) {
        self.wait(&format!("{text:?} gone from the screen"), |screen| {
            (!screen.contents().contains(text)).then_some(())
        });
    }

    /// The screen as it stands.
    pub(crate) fn screen(&self) -> vt100::Screen {
        self.inbox.lock().parser.screen().clone()
    }

    /// The text on the screen as it stands, without spaces at the ends of lines.
    pub(crate) fn text(&self) -> String {
        self.screen().contents()
    }

    /// One cell with its colours and attributes; column and row are counted from 0.
    pub(crate) fn cell(&self, column: u16, row: u16) -> vt100::Cell {
        self.screen().cell(row, column).unwrap().clone()
    }

    /// How many bytes the program has written so far.
    pub(crate) fn byte_count(&self) -> usize {
        self.inbox.lock().bytes.len()
    }

    /// Resizes the terminal, which tells the program.
    pub(crate) fn resize(&self, columns: u16, rows: u16) {
        let (rows_shown, columns_shown) = cells(columns, rows);
        // The screen first: the program's answer must find it in its new size.
        self.inbox
            .lock()
            .parser
            .screen_mut()
            .set_size(rows_shown, columns_shown);
        self.master().resize(pty_size(columns, rows)).unwrap();
    }

    fn master(&self) -> &dyn MasterPty {
        &**self.master.as_ref().unwrap()
    }

    /// The program's process.
    pub(crate) fn process(&self) -> Pid {
        let id = self.child.process_id().unwrap();
        Pid::from_raw(i32::try_from(id).unwrap()).unwrap()
    }

    /// Sends a signal to the program.
    pub(crate) fn signal(&self, signal: Signal) {
        kill_process(self.process(), signal).unwrap();
    }

    /// Waits until the program is stopped, which it does not end.
    pub(crate) fn wait_stopped(&self) {
        let deadline = Instant::now() + PATIENCE;
        let options = WaitOptions::UNTRACED | WaitOptions::NOHANG;
        while !waitpid(Some(self.process()), options)
            .unwrap()
            .is_some_and(|(_, status)| status.stopped())
        {
            assert!(
                Instant::now() < deadline,
                "the program was not stopped\n{}",
                self.text()
            );
            thread::sleep(LOOK);
        }
    }

    /// Whether the terminal's modes are now as they were before the program started.
    pub(crate) fn modes_are_restored(&self) -> bool {
        modes(self.master()) == self.modes_before
    }

    /// Waits for the program's own end.
    pub(crate) fn finish(mut self) -> Ended {
        let status = self.wait_end();
        self.reader.take().unwrap().join().unwrap();
        let modes_restored = self.modes_are_restored();
        let received = self.inbox.lock();
        Ended {
            status,
            bytes: received.bytes.clone(),
            screen: received.parser.screen().clone(),
            modes_restored,
        }
    }

    /// Closes the terminal while the program runs; returns how it ended and how long that took.
    ///
    /// The program has to be one that draws after a resize.
    pub(crate) fn hang_up(mut self) -> (ExitStatus, Duration) {
        // Every handle has to go, the reader's too, and that one waits for bytes: a resize brings them.
        self.inbox.lock().hanging_up = true;
        let size = self.master().get_size().unwrap();
        self.resize(size.cols + 1, size.rows);
        self.wait_received("a frame after the resize", |received| {
            received.at_end.then_some(())
        });
        self.reader.take().unwrap().join().unwrap();
        let start = Instant::now();
        self.keyboard = None;
        self.master = None;
        (self.wait_end(), start.elapsed())
    }

    fn wait_end(&mut self) -> ExitStatus {
        let deadline = Instant::now() + PATIENCE;
        loop {
            if let Some(status) = self.child.try_wait().unwrap() {
                return status;
            }
            assert!(
                Instant::now() < deadline,
                "the program did not end\n{}",
                self.text()
            );
            thread::sleep(LOOK);
        }
    }
}

impl Drop for Session {
    fn drop(&mut self) {
        if let Ok(None) = self.child.try_wait() {
            // It may end by itself just now, and then there is nothing left to kill.
            let _ = kill_process(self.process(), Signal::KILL);
            let _ = self.child.wait();
        }
    }
}

impl Ended {
    /// All that was written, as text.
    pub(crate) fn output(&self) -> String {
        String::from_utf8_lossy(&self.bytes).into_owned()
    }

    /// Asserts that the terminal was given back: its modes, the main screen, the cursor, and no
    /// bracketed paste.
    pub(crate) fn assert_given_back(&self) {
        assert!(
            self.modes_restored,
            "the terminal's modes differ from those before"
        );
        assert!(
            !self.screen.alternate_screen(),
            "still on the alternate screen"
        );
        assert!(
            !self.screen.bracketed_paste(),
            "bracketed paste is still on"
        );
        assert!(!self.screen.hide_cursor(), "the cursor is still hidden");
    }
}
