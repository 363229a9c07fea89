//! The cabinet from the front: what closes it, and what shows through.

use gablerow_core::elevation::{Elevation, Leaf, Look, Shape, What};
use gablerow_core::layout::Span;
use gablerow_core::measure::Unit;
use gablerow_core::propose::Proposal;
use gablerow_papers::front::{Area, Cell, Cells, Ground, Ink, Projection};
use unicode_width::UnicodeWidthStr;

use super::canvas::Canvas;
use super::{front_info, panel, proposals, sizes};
use crate::app::{App, Pane};
use crate::scene::FrontScene;
use crate::theme::Role;

/// The fewest columns of the words beside the drawing.
const INFO_LEAST: u16 = 28;

/// Draws everything above the last line; `open` are the proposals that lie open.
pub(super) fn draw(
    canvas: &mut Canvas,
    app: &App,
    scene: &FrontScene,
    (pane, open): (Option<Pane>, &[Proposal]),
) {
    let (width, height) = (canvas.width(), canvas.height() - 1);
    let unit = app.desk.job.unit;
    let before = panel::numbers_width(unit);
    let columns = width.saturating_sub(before + 1 + INFO_LEAST);
    let elevation = drawn(scene, app.front.boxes);
    let first = scene.scene.layout.grid.first;
    let projection = Projection::of(&elevation, first, (columns, height - 1));
    let spot = scene.spot(app.front.at);
    let ring = spot.and_then(|spot| projection.around(spot.at.key()));

    title(
        &mut canvas.part(before, 0, projection.columns, 1),
        &projection,
    );
    numbers(
        &mut canvas.part(0, 1, before, projection.lines),
        scene,
        unit,
        &projection,
        ring.map(|(_, lines)| lines),
    );
    let mut board = canvas.part(before, 1, projection.columns, projection.lines);
    let mut sheet = Sheet::of(&projection);
    sheet.paint(&mut board);
    for label in labels(scene, unit, &projection) {
        sheet.write(&mut board, &label);
    }
    if let Some(ring) = ring {
        person(&mut board, ring);
    }

    let x = before + projection.columns + 1;
    let mut beside = canvas.part(x, 0, width.saturating_sub(x), height);
    match pane {
        Some(Pane::Sizes(at)) => sizes::draw(&mut beside, app, &scene.scene, at),
        Some(Pane::Proposals { .. }) => proposals::draw(&mut beside, app, open),
        _ => front_info::draw(&mut beside, app, scene),
    }
}

/// The cabinet as it is drawn: with the rooms of boxes only when they are asked for.
fn drawn(scene: &FrontScene, boxes: bool) -> Elevation {
    let mut elevation = scene.elevation.clone();
    let shown = |shape: &Shape| boxes || !matches!(shape.what, What::Box(_));
    elevation.shapes.retain(shown);
    elevation
}

/// Says what is seen, and at which ratio when the true shape did not fit.
fn title(canvas: &mut Canvas, projection: &Projection) {
    let ratio = projection.ratio;
    let column = projection.column().exact_mm();
    let names = match ratio {
        1 => vec!["from the front".to_owned(), "front".to_owned()],
        _ => vec![
            format!("front, 1:{ratio}, a column is {column} mm"),
            format!("1:{ratio}, column {column} mm"),
            format!("1:{ratio}"),
        ],
    };
    let fits = |name: &&String| name.width() <= usize::from(canvas.width());
    if let Some(name) = names.iter().find(fits) {
        let wide = u16::try_from(name.width()).unwrap_or(0);
        canvas.text((canvas.width() - wide) / 2, 0, name, Role::Title);
    }
}

/// Hole numbers and heights above the carcass underside.
fn numbers(
    canvas: &mut Canvas,
    scene: &FrontScene,
    unit: Unit,
    projection: &Projection,
    here: Option<Cells>,
) {
    let layout = &scene.scene.layout;
    let arrow = canvas.glyphs().arrow_right;
    let room = usize::from(canvas.width() - 5);
    for line in 0..projection.lines {
        let number = projection.hole(line);
        if !(1..=layout.last).contains(&number) {
            continue;
        }
        let is_here = here.is_some_and(|lines| lines.middle() == line);
        let (sign, role) = match is_here {
            true => (arrow, Role::Strong),
            false => (' ', Role::Gutter),
        };
        let height = layout.height(number).short(unit).to_string();
        let height = height.trim_end_matches('"');
        let y = projection.lines - 1 - line;
        canvas.text(0, y, &format!("{sign}{number:>3}{height:>room$}"), role);
    }
}

/// A ring around what the person stands on.
fn person(board: &mut Canvas, (columns, lines): (Cells, Cells)) {
    let height = board.height();
    for line in lines.from..lines.to {
        for column in columns.from..columns.to {
            let is_end = |cells: Cells, at| at == cells.from || at + 1 == cells.to;
            if is_end(columns, column) || is_end(lines, line) {
                board.over(column, height - 1 - line, Role::Ring);
            }
        }
    }
}

/// The drawing as cells, from the foot, and which of them are written on.
struct Sheet {
    cells: Vec<Vec<Cell>>,
    written: Vec<Vec<bool>>,
}

impl Sheet {
    fn of(projection: &Projection) -> Self {
        let cells: Vec<Vec<Cell>> = (0..projection.lines)
            .map(|line| projection.line(line))
            .collect();
        let written = cells.iter().map(|line| vec![false; line.len()]).collect();
        Self { cells, written }
    }

    fn paint(&self, board: &mut Canvas) {
        let signs = board.glyphs().front;
        for (y, line) in (0..).zip(self.cells.iter().rev()) {
            for (x, cell) in (0..).zip(line) {
                board.set(x, y, signs.of_cell(*cell), role(*cell));
            }
        }
    }

    /// Writes the longest form of a label that has room on bare ground, as near as may be to where it belongs.
    fn write(&mut self, board: &mut Canvas, label: &Label) {
        let height = board.height();
        for text in &label.texts {
            let wide = u16::try_from(text.width()).unwrap_or(u16::MAX);
            let Some((line, column)) = self.place(label, wide) else {
                continue;
            };
            let end = board.text(column, height - 1 - line, text, label.role);
            self.written(line, column, end - column).fill(true);
            return;
        }
    }

    /// The nearest place for so many columns of text; the line of a gap only where there is no other.
    fn place(&self, label: &Label, wide: u16) -> Option<(u16, u16)> {
        let Label { columns, lines, .. } = *label;
        let spare = columns.count().checked_sub(wide)?;
        let centred = columns.from + spare / 2;
        let near = |from: u16, to: u16, wanted: u16| {
            let mut all: Vec<u16> = (from..to).collect();
            all.sort_by_key(|at| at.abs_diff(wanted));
            all
        };
        let mut lines = near(lines.from, lines.to, label.line);
        lines.sort_by_key(|&line| self.has_gap(line, centred));
        let columns = near(columns.from, columns.from + spare + 1, centred);
        let on = |line| {
            let free = |&&column: &&u16| self.is_free(line, column, wide, label.ground);
            columns.iter().find(free).map(|&column| (line, column))
        };
        lines.into_iter().find_map(on)
    }

    fn has_gap(&self, line: u16, column: u16) -> bool {
        let line = self.cells.get(usize::from(line));
        let cell = line.and_then(|line| line.get(usize::from(column)));
        cell.is_some_and(|cell| cell.ink == Ink::Gap)
    }

    /// Whether text fits here, with a blank on either side.
    fn is_free(&self, line: u16, column: u16, wide: u16, ground: Ground) -> bool {
        let before = column.saturating_sub(1);
        let range = usize::from(before)..usize::from(column.saturating_add(wide).saturating_add(1));
        let line = usize::from(line);
        let cells = self
            .cells
            .get(line)
            .and_then(|line| line.get(range.clone()));
        let written = self.written.get(line).and_then(|line| line.get(range));
        let bare = |cell: &Cell| {
            cell.ground == ground && matches!(cell.ink, Ink::Blank | Ink::Gap | Ink::Hatch)
        };
        cells.is_some_and(|cells| cells.iter().all(bare))
            && written.is_some_and(|written| !written.contains(&true))
    }

    fn written(&mut self, line: u16, column: u16, wide: u16) -> &mut [bool] {
        let range = usize::from(column)..usize::from(column.saturating_add(wide));
        let line = self.written.get_mut(usize::from(line));
        line.and_then(|line| line.get_mut(range))
            .unwrap_or_default()
    }
}

/// Words on the drawing.
struct Label {
    /// What to write, the longest first.
    texts: Vec<String>,
    /// The line it belongs on, from the foot.
    line: u16,
    /// Where it may stand.
    columns: Cells,
    /// Where it may stand.
    lines: Cells,
    /// What it is written on.
    ground: Ground,
    role: Role,
}

/// Names and sizes: of fronts, of drawers behind, of bays.
fn labels(scene: &FrontScene, unit: Unit, projection: &Projection) -> Vec<Label> {
    let mut labels = Vec::new();
    let areas = || projection.areas.iter();
    for area in areas() {
        match area.what {
            What::Front(leaf) => labels.extend(of_front(scene, unit, area, leaf)),
            What::Behind(key) => labels.extend(scene.front(key).map(|front| {
                let name = scene.name(key);
                let height = front.height.total().short(unit);
                Label {
                    texts: vec![format!("{name} {height}"), name],
                    line: area.lines.middle(),
                    columns: inner(area.columns),
                    lines: area.lines,
                    ground: Ground::Front,
                    role: Role::EmptyHole,
                }
            })),
            _ => {}
        }
    }
    for area in areas() {
        let What::Bay(key) = area.what else { continue };
        let Some((number, bay)) = scene.bay(key) else {
            continue;
        };
        let name = format!("bay {number}");
        let [width, height] =
            [bay.width_span(), bay.height_span()].map(|Span { from, to }| (to - from).short(unit));
        let own = |texts, line, ground, role| Label {
            texts,
            line,
            columns: inner(area.columns),
            lines: area.lines,
            ground,
            role,
        };
        let line = area.lines.middle();
        match projection.hiding(area) {
            None => {
                labels.push(own(vec![name], line, Ground::Space, Role::Space));
                let size = format!("{width} x {height}");
                let below = line.saturating_sub(1);
                labels.push(own(vec![size], below, Ground::Space, Role::Space));
            }
            // Behind a drawer its box is what there is to know; a door shows what it closes.
            Some((door, Look::Hung(_))) => labels.push(Label {
                lines: door.lines.within(area.lines),
                ..own(
                    vec![name],
                    door.lines.from + door.lines.count() * 3 / 4,
                    Ground::Front,
                    Role::EmptyHole,
                )
            }),
            Some(_) => {}
        }
    }
    labels
}

fn of_front(scene: &FrontScene, unit: Unit, area: &Area, leaf: Leaf) -> Vec<Label> {
    let Some(front) = scene.front(leaf.key) else {
        return Vec::new();
    };
    let name = scene.name(leaf.key);
    let [width, height] = [front.width, front.height].map(|sum| sum.total().short(unit));
    let line = area.lines.middle();
    let own = |texts, line| Label {
        texts,
        line,
        columns: inner(area.columns),
        lines: area.lines,
        ground: Ground::Front,
        role: Role::Board,
    };
    match leaf.look {
        Look::Hung(_) => {
            let above = line + 1;
            vec![
                own(vec![name], above),
                own(vec![format!("{width} x {height}")], line),
            ]
        }
        Look::Drawer => vec![own(vec![format!("{name} {height}"), name], line)],
        // The blanks keep the hatching off the words.
        Look::False => vec![own(
            vec![format!(" {name} {height} "), format!(" {name} ")],
            line,
        )],
    }
}

/// The columns within both edges.
fn inner(columns: Cells) -> Cells {
    Cells {
        from: columns.from + 1,
        to: (columns.to - 1).max(columns.from + 1),
    }
}

/// What a cell is.
fn role(cell: Cell) -> Role {
    match (cell.ink, cell.ground) {
        (Ink::Plate, _) => Role::PlateHole,
        (Ink::Runner, _) => Role::RunnerHole,
        (Ink::Dots | Ink::Upright | Ink::Panel | Ink::Shelf, Ground::Front) => Role::EmptyHole,
        (_, Ground::Outside) => Role::Plain,
        (_, Ground::Space) => Role::Space,
        (Ink::Blank | Ink::Gap | Ink::Grip(_), _) => Role::Board,
        (_, Ground::Board | Ground::Front) => Role::BoardEdge,
    }
}
