use super::*;
use crate::scene::{Id, Layer, Sheet, Size};

/// Rounding of a coordinate in a file, user units, with the rounding of an arc's end.
const FILE_ROUNDING: f64 = 0.000_51;

/// A scene with everything that a scene can hold: a ring, a clipped line, an arc, letters.
fn sample(letters: &str) -> Scene {
    let sheet = Sheet { width_em: 20.0, height_em: 10.0, narrow: false };
    let mut scene = Scene { sheet, ..Scene::default() };
    scene.clips.push(Circle { centre: Point::new(5.0, 5.0), radius: 2.0 });
    let turn = |radius, sweep_rad| {
        Step::Arc(Arc { centre: Point::new(5.0, 5.0), radius, start_rad: 0.0, sweep_rad })
    };
    let whole = core::f64::consts::TAU;
    let ring = [
        Step::Move(Point::new(8.0, 5.0)),
        turn(3.0, whole),
        Step::Close,
        Step::Move(Point::new(7.0, 5.0)),
        turn(2.0, -whole),
        Step::Close,
    ];
    let hook = [Step::Move(Point::new(6.5, 5.0)), turn(1.5, -2.0), Step::Line(Point::ZERO)];
    push(&mut scene, Role::Cut(crate::scene::Tint::Roller), None, &ring);
    push(&mut scene, Role::Axis, Some(0), &hook);
    scene.text.push_str(letters);
    let text = Text {
        at: Point::new(1.0, 9.0),
        align: Align::Middle,
        size: Size::Strong,
        letters: 0..letters.len(),
    };
    let (id, layer, role) = (Id::Mark("test"), Layer::Labels, Role::Figure);
    scene.items.push(Item { id, layer, role, shape: Shape::Text(text), clip: None });
    scene
}

fn push(scene: &mut Scene, role: Role, clip: Option<usize>, steps: &[Step]) {
    let start = scene.steps.len();
    scene.steps.extend_from_slice(steps);
    let shape = Shape::Path(start..scene.steps.len());
    scene.items.push(Item { id: Id::Mark("test"), layer: Layer::Metal, role, shape, clip });
}

fn options<'a>() -> SvgOptions<'a> {
    SvgOptions {
        title: "A ring",
        description: "A ring, a hook and a word.",
        caption: &[],
        unit: 16.0,
        width_px: None,
        hidden: &[],
    }
}

fn recorded(scene: &Scene, unit: f64) -> Vec<Call> {
    let mut recorder = Recorder::default();
    walk(scene, unit, |_| true, &mut recorder);
    recorder.calls
}

/// Every figure of every path in a document, path by path.
fn figures_of_paths(document: &str) -> Vec<Vec<f64>> {
    let numbers = |data: &str| {
        data.split(|c: char| c.is_ascii_alphabetic() || c == ' ')
            .filter(|figure| !figure.is_empty())
            .map(|figure| figure.parse().unwrap())
            .collect()
    };
    let data = |part: &str| part.split('"').next().map(numbers);
    document.split(" d=\"").skip(1).filter_map(data).collect()
}

/// The same figures from recorded calls, as a document must write them.
fn figures_of_calls(calls: &[Call]) -> Vec<Vec<f64>> {
    let mut paths = Vec::new();
    for call in calls {
        match call {
            Call::Begin => paths.push(Vec::new()),
            Call::Move(p) | Call::Line(p) => paths.last_mut().unwrap().extend([p.x, p.y]),
            Call::Arc(arc) => paths.last_mut().unwrap().extend(figures_of_arc(arc)),
            _ => {}
        }
    }
    paths
}

fn figures_of_arc(arc: &Arc) -> Vec<f64> {
    let sense = if arc.sweep_rad > 0.0 { 1.0 } else { 0.0 };
    let to = |p: Point| [arc.radius, arc.radius, 0.0, 0.0, sense, p.x, p.y];
    let half = arc.at(arc.start_rad + 0.5 * arc.sweep_rad);
    let split = arc.sweep_rad.abs() >= core::f64::consts::PI;
    [split.then(|| to(half)), Some(to(arc.end()))].into_iter().flatten().flatten().collect()
}

#[test]
fn a_document_holds_the_paths_that_a_canvas_is_told() {
    let scene = sample("Word");
    let told = figures_of_calls(&recorded(&scene, 16.0));
    let written = figures_of_paths(&svg(&scene, &Theme::light(), &options()));
    assert_eq!(told.len(), 2);
    assert_eq!(told.len(), written.len());
    for (told, written) in told.iter().zip(&written) {
        assert_eq!(told.len(), written.len());
        for (a, b) in told.iter().zip(written) {
            assert!((a - b).abs() < FILE_ROUNDING, "{a} {b}");
        }
    }
}

#[test]
fn a_document_reads_as_expected() {
    insta::assert_snapshot!(svg(&sample("Word"), &Theme::light(), &options()));
}

#[test]
fn a_walk_begins_with_the_sheet_and_ends_unclipped() {
    let calls = recorded(&sample("Word"), 2.0);
    assert_eq!(calls[0], Call::Sheet(40.0, 20.0));
    let clip = Circle { centre: Point::new(10.0, 10.0), radius: 4.0 };
    let clips: Vec<_> = calls.iter().filter(|call| matches!(call, Call::Clip(_))).collect();
    assert_eq!(clips, [&Call::Clip(Some(clip)), &Call::Clip(None)]);
}

#[test]
fn a_clip_that_is_last_is_lifted() {
    let mut scene = sample("Word");
    scene.items.pop();
    assert_eq!(recorded(&scene, 2.0).last(), Some(&Call::Clip(None)));
    let document = svg(&scene, &Theme::light(), &options());
    assert_eq!(document.matches("<g ").count(), document.matches("</g>").count());
}

#[test]
fn what_is_not_shown_is_not_walked() {
    let mut recorder = Recorder::default();
    walk(&sample("Word"), 1.0, |item| item.layer != Layer::Metal, &mut recorder);
    assert!(matches!(recorder.calls[..], [Call::Sheet(..), Call::Text(..)]));
}

#[test]
fn letters_are_inert_wherever_they_come_from() {
    let hostile = "<script>alert(1)</script>\" onload=\"x\u{0}&";
    let caption = [hostile];
    let theme = Theme::from_rule(|_| hostile);
    let given = SvgOptions { title: hostile, description: hostile, caption: &caption, ..options() };
    let document = svg(&sample(hostile), &theme, &given);
    assert!(!document.contains("<script"));
    assert!(!document.contains("onload=\""));
    assert!(!document.contains('\u{0}'));
    assert_eq!(document.matches("&lt;script&gt;alert(1)&lt;/script&gt;").count(), 4 + 7);
}

#[test]
fn a_caption_is_broken_to_the_sheet_and_makes_it_higher() {
    let caption = ["It turns 0.28 degrees, then the pin stops it.", "Not the plates."];
    let plain = svg(&sample("Word"), &Theme::light(), &options());
    let given = SvgOptions { caption: &caption, width_px: Some(640.0), ..options() };
    let document = svg(&sample("Word"), &Theme::light(), &given);
    assert!(plain.contains(r#"viewBox="0 0 320 160" width="320" height="160""#));
    assert!(document.contains(r#"viewBox="0 0 320 236.8" width="640" height="473.6""#));
    assert!(document.contains(">It turns 0.28 degrees, then</text>"));
    assert!(document.contains(">the pin stops it.</text>"));
    assert!(document.contains(">Not the plates.</text>"));
}
