//! What a reader that is not ours finds in a document.

use alloc::vec::Vec;

use lopdf::content::Operation;
use lopdf::{Document, Object};

/// How far what is read back may be off, in mm.
pub(crate) const CLOSE: f64 = 0.001;

/// What a document has on its first page.
pub(crate) fn operations(bytes: &[u8]) -> Vec<Operation> {
    let document = Document::load_mem(bytes).unwrap();
    let first = document.get_pages()[&1];
    let content = document.get_and_decode_page_content(first).unwrap();
    content.operations
}

pub(crate) fn numbers(operation: &Operation) -> Vec<f64> {
    let number = |object: &Object| object.as_float().map(f64::from);
    operation
        .operands
        .iter()
        .map(|object| number(object).unwrap())
        .collect()
}

/// The corners of every shape on the first page, in points: where it begins and what each line or curve names.
pub(crate) fn shapes(bytes: &[u8]) -> Vec<Vec<[f64; 2]>> {
    let mut scale = 1.0;
    let mut shapes: Vec<Vec<[f64; 2]>> = Vec::new();
    for operation in operations(bytes) {
        match operation.operator.as_str() {
            "cm" => {
                let [a, b, c, d, e, f] = numbers(&operation)[..] else {
                    panic!()
                };
                assert_eq!([b, c, e, f], [0.0; 4]);
                assert!((a - d).abs() < f64::EPSILON);
                scale *= a;
            }
            "m" | "l" | "c" => {
                if operation.operator == "m" {
                    shapes.push(Vec::new());
                }
                for place in numbers(&operation).chunks(2) {
                    shapes
                        .last_mut()
                        .unwrap()
                        .push([place[0] * scale, place[1] * scale]);
                }
            }
            _ => {}
        }
    }
    shapes
}

/// Middle and diameter of a circle of four curves, in mm, after a look that it is round halfway along each.
pub(crate) fn circle(shape: &[[f64; 2]]) -> (f64, f64, f64) {
    assert_eq!(shape.len(), 13);
    let quarter = |at: usize| shape[3 * at];
    let [right, top, left, foot] = [0, 1, 2, 3].map(quarter);
    assert_eq!(shape[12], right);
    let middle = [(right[0] + left[0]) / 2.0, (top[1] + foot[1]) / 2.0];
    let diameter = right[0] - left[0];
    assert!((top[1] - foot[1] - diameter).abs() < CLOSE);
    for at in 0..4 {
        let curve = &shape[3 * at..=3 * at + 3];
        let halfway = [0, 1].map(|axis| {
            (curve[0][axis] + 3.0 * curve[1][axis] + 3.0 * curve[2][axis] + curve[3][axis]) / 8.0
        });
        let away = (halfway[0] - middle[0]).hypot(halfway[1] - middle[1]);
        assert!((away - diameter / 2.0).abs() < 0.0003 * diameter + CLOSE);
    }
    let mm = 25.4 / 72.0;
    (middle[0] * mm, middle[1] * mm, diameter * mm)
}
