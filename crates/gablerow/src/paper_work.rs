//! Papers written beside the screen: a thread prints and writes, and tells how far it has come.

use std::io;
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{self, Receiver, Sender, TryRecvError};
use std::thread::{self, JoinHandle};

use gablerow_core::job::Job;

use crate::paper_run::write_papers;
use crate::papers_at::PaperWish;
use crate::released::Released;
use crate::update::Message;

/// Papers that are being written. Dropped, it breaks off after the file it is at, and waits for that.
#[derive(Debug)]
pub struct PaperWork {
    news: Receiver<Message>,
    stop: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
}

impl PaperWork {
    /// Begins to write what is wished of a job; `wake` is called whenever there is news.
    ///
    /// # Errors
    /// The system has no more threads.
    pub fn start(job: Job, wish: PaperWish, wake: impl Fn() + Send + 'static) -> io::Result<Self> {
        let (sender, news) = mpsc::channel();
        let stop = Arc::new(AtomicBool::new(false));
        let asked = Arc::clone(&stop);
        let thread = thread::Builder::new()
            .name("papers".to_owned())
            .spawn(move || {
                // Drops in the other order: whoever is woken last finds the channel closed, even after a panic.
                let waking = Waking(wake);
                let sender = sender;
                write(&job, &wish, &sender, &asked, &waking);
            })?;
        Ok(Self {
            news,
            stop,
            thread: Some(thread),
        })
    }

    /// What is new, and whether that was the last of it.
    #[must_use]
    pub fn news(&self) -> (Vec<Message>, bool) {
        let mut news = Vec::new();
        loop {
            match self.news.try_recv() {
                Ok(message) => news.push(message),
                Err(TryRecvError::Empty) => return (news, false),
                Err(TryRecvError::Disconnected) => return (news, true),
            }
        }
    }

    /// Asks it to break off after the file it is at.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Release);
    }
}

impl Drop for PaperWork {
    fn drop(&mut self) {
        self.stop();
        if let Some(thread) = self.thread.take() {
            // A panic of it is said where its news end.
            let _ = thread.join();
        }
    }
}

/// Calls when it goes.
struct Waking<F: Fn()>(F);

impl<F: Fn()> Drop for Waking<F> {
    fn drop(&mut self) {
        (self.0)();
    }
}

fn write<F: Fn()>(
    job: &Job,
    wish: &PaperWish,
    sender: &Sender<Message>,
    stop: &AtomicBool,
    waking: &Waking<F>,
) {
    let released = Released::of_one(job, wish.cabinet);
    let written = write_papers(&released, wish, |step| {
        let name = step.file.map(|(file, _)| file.name.clone());
        let put = Message::PaperPut {
            done: step.done,
            of: step.of,
            name: name.unwrap_or_default(),
        };
        let is_heard = sender.send(put).is_ok();
        (waking.0)();
        match is_heard && !stop.load(Ordering::Acquire) {
            true => ControlFlow::Continue(()),
            false => ControlFlow::Break(()),
        }
    });
    // Nobody listens any more where the program is ending anyway.
    let _ = sender.send(match written {
        Ok(tally) => Message::PapersOver(tally),
        Err(error) => Message::PapersFailed(error.to_string()),
    });
}
