//! Outputs that are closed or full.

#[cfg(target_os = "linux")]
use std::fs;
use std::io::Read;
use std::process::Stdio;

use gablerow::demo;
use gablerow_core::job::{Key, Label};

use super::{Shop, said, without_stops};

#[test]
fn a_reader_that_stops_early_is_no_error() {
    let mut job = demo::job().unwrap();
    // More than a pipe holds.
    job.cabinets = (1..=60)
        .map(|number| {
            let mut cabinet = job.cabinets[0].clone();
            (cabinet.key, cabinet.name) = (Key(number), Label::new(&format!("S{number}")).unwrap());
            cabinet
        })
        .collect();
    job.left_at = None;
    let shop = Shop::with(&job);
    for words in [
        &["holes", "store.json", "--json"][..],
        &["face", "store.json"],
        &["store.json"],
        &["schema"],
        &["--help"],
    ] {
        let mut child = shop
            .command(words)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let mut first = [0; 1];
        let mut out = child.stdout.take().unwrap();
        out.read_exact(&mut first).unwrap();
        drop(out);
        let said = said(child.wait_with_output().unwrap());
        assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{words:?}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_an_error() {
    let full = fs::OpenOptions::new()
        .write(true)
        .open("/dev/full")
        .unwrap();
    let shop = Shop::with(&without_stops());
    for words in [
        &["holes", "store.json", "--csv"][..],
        &["schema"],
        &["--help"],
    ] {
        let output = shop
            .command(words)
            .stdout(full.try_clone().unwrap())
            .stderr(Stdio::piped())
            .output()
            .unwrap();
        let said = said(output);
        assert_eq!(said.code, Some(2), "{words:?}");
        assert!(
            said.err.starts_with("error: ") && said.err.contains("look at the disk"),
            "{words:?} {}",
            said.err
        );
    }
}
