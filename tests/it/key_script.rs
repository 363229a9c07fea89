//! Keys as people write them down, sent to the program one by one.

use crate::pty::{Session, keys};

/// What stands for a moment in which nothing is pressed.
const PAUSE: &str = "";

/// The presses of a script: words between blanks, from `#` to the end of a line is a remark; `Pause` is a moment without one.
pub(crate) fn presses(script: &str) -> Vec<String> {
    let lines = script
        .lines()
        .map(|line| line.split('#').next().unwrap_or_default());
    lines.flat_map(str::split_whitespace).map(press).collect()
}

/// How many presses there are, moments without one left out.
pub(crate) fn count(presses: &[String]) -> usize {
    presses.iter().filter(|press| *press != PAUSE).count()
}

/// The bytes a terminal sends for a key by its name.
fn press(name: &str) -> String {
    let bytes = match name {
        "Up" => keys::UP,
        "Down" => keys::DOWN,
        "Left" => keys::LEFT,
        "Right" => keys::RIGHT,
        "Enter" => keys::ENTER,
        "Esc" => keys::ESC,
        "Space" => " ",
        "Backspace" => keys::BACKSPACE,
        "Pause" => PAUSE,
        letter => letter,
    };
    bytes.to_owned()
}

/// Sends the presses with the time a hand needs between them, so that no two run into one.
pub(crate) fn send(session: &mut Session, presses: &[String]) {
    for press in presses {
        session.send(press);
        let rest = match press.as_str() {
            keys::ESC => 60,
            PAUSE => 120,
            _ => 15,
        };
        std::thread::sleep(std::time::Duration::from_millis(rest));
    }
}

/// What a screen shows, without the blanks at the ends of its lines.
pub(crate) fn shown(screen: &vt100::Screen) -> String {
    let contents = screen.contents();
    contents
        .lines()
        .map(str::trim_end)
        .collect::<Vec<_>>()
        .join("\n")
        .trim_end()
        .to_owned()
        + "\n"
}

/// Waits until the screen is the committed one; a frame may arrive in pieces.
pub(crate) fn assert_screen(session: &Session, path: &str) {
    if std::env::var_os("GABLEROW_WRITE").is_some() {
        std::thread::sleep(std::time::Duration::from_millis(300));
    }
    let expected = golden(path, &shown(&session.screen()));
    session.wait(path, |screen| (shown(screen) == expected).then_some(()));
}

/// The text of a committed file, or the new text written there when `GABLEROW_WRITE` is set.
pub(crate) fn golden(path: &str, now: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .join(path);
    if std::env::var_os("GABLEROW_WRITE").is_some() {
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, now).unwrap();
    }
    std::fs::read_to_string(&path).unwrap_or_default()
}
