//! How each kind of item is painted: which named ink fills it, which strokes it, how wide.

use super::item::{Ink, Tint};

/// What an item is to the eye. A painter asks [`Role::fill`] and [`Role::stroke`] and knows nothing
/// else about it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Metal that is cut: pale fill, wide edge.
    Cut(Tint),
    /// Metal behind the cut: pale fill, edge.
    Behind(Tint),
    /// Section lines of a cut part.
    SectionLine(Tint),
    /// Where a part is broken off.
    BreakLine(Tint),
    /// The centre line of a pin.
    CentreLine,
    /// The undeflected axis of the chain.
    Axis,
    /// The wall that holds the first link.
    Wall,
    /// Metal that overlaps.
    Overlap,
    /// An edge that touches.
    TouchingEdge,
    /// A toothed edge: touches and moves.
    RubbingEdge,
    /// The spot where a corner touches.
    TouchingSpot,
    /// From a touching spot to its disc.
    DiscLeader,
    /// The disc that holds the number of a contact.
    Disc,
    /// The same, pointed at.
    DiscLit,
    /// The glow behind a face that is pointed at.
    Lit,
    /// Dimension and extension lines.
    Dimension,
    /// An arrowhead.
    Arrow,
    /// From a name or number to what it names.
    Leader,
    /// Where a leader ends on a part.
    LeaderDot,
    /// A heavy stroke of a cut's mark or the scale bar.
    Heavy,
    /// A grip's disc.
    Grip,
    /// The ring at the end of a dimension line.
    GripEnd,
    /// A grip's signs.
    GripSign,
    /// The way a grip can go.
    GripPath,
    /// The outline of a chain that is held for comparison.
    Ghost,
    /// A patch of sheet that keeps lines off a text.
    Patch,
    /// The shaft of a force.
    Force,
    /// The head of a force.
    ForceHead,
    /// The rim of a magnifier.
    Rim,
    /// A sheet of paper shown for scale.
    Paper,
    /// The name of a body.
    Name(Tint),
    /// Figures.
    Figure,
    /// Notes.
    Note,
    /// The number in a disc.
    DiscNumber,
    /// The same, pointed at.
    DiscNumberLit,
    /// How much metal overlaps.
    OverlapNumber,
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    /// Its colour.
    pub ink: Ink,
    /// Its width, em. Lines keep their width at any drawing scale and grow with the text.
    pub width_em: f64,
    /// Lengths of dashes and gaps in turn, em; empty for a whole line.
    pub dash_em: &'static [f64],
}

/// Line widths, em: 1 px is about 0.07 em of ordinary text.
const THIN_EM: f64 = 0.06;
const FINE_EM: f64 = 0.075;
const EDGE_EM: f64 = 0.11;
const HEAVY_EM: f64 = 0.17;
const TOUCH_EM: f64 = 0.34;
const GLOW_EM: f64 = 0.9;

/// Chain line: long, gap, short, gap.
const CHAIN_EM: &[f64] = &[0.9, 0.22, 0.2, 0.22];
/// Dotted.
const DOTS_EM: &[f64] = &[0.22, 0.26];
/// Long dash, two dots: the line of parts that stand elsewhere (ISO 128-2, from memory).
const TWO_DOTS_EM: &[f64] = &[0.8, 0.2, 0.12, 0.2, 0.12, 0.2];
const WHOLE: &[f64] = &[];

impl Role {
    /// The ink that fills the shape; for a text, its colour.
    pub fn fill(self) -> Option<Ink> {
        match self {
            Self::Cut(tint) | Self::Behind(tint) => Some(Ink::Fill(tint)),
            Self::Name(tint) => Some(Ink::Edge(tint)),
            Self::Overlap | Self::OverlapNumber => Some(Ink::Overlap),
            Self::RubbingEdge => Some(Ink::Rub),
            Self::TouchingSpot | Self::DiscLit | Self::DiscNumber => Some(Ink::Touch),
            Self::Disc | Self::Grip | Self::GripEnd | Self::Patch | Self::DiscNumberLit => {
                Some(Ink::Sheet)
            }
            Self::Arrow | Self::ForceHead | Self::GripSign | Self::LeaderDot | Self::Figure => {
                Some(Ink::Ink)
            }
            Self::Paper => Some(Ink::Paper),
            Self::Note => Some(Ink::InkSoft),
            _ => None,
        }
    }

    /// The line that goes round the shape or is it.
    pub fn stroke(self) -> Option<Stroke> {
        let line = |ink, width_em, dash_em| Some(Stroke { ink, width_em, dash_em });
        match self {
            Self::Cut(tint) => line(Ink::Edge(tint), EDGE_EM, WHOLE),
            Self::Behind(tint) => line(Ink::Edge(tint), EDGE_EM, WHOLE),
            Self::SectionLine(tint) => line(Ink::Edge(tint), THIN_EM, WHOLE),
            Self::BreakLine(tint) => line(Ink::Edge(tint), FINE_EM, WHOLE),
            Self::CentreLine => line(Ink::InkSoft, FINE_EM, CHAIN_EM),
            Self::Axis => line(Ink::Ink, FINE_EM, CHAIN_EM),
            Self::Wall | Self::Dimension | Self::Paper => line(Ink::Ink, FINE_EM, WHOLE),
            Self::Overlap => line(Ink::Overlap, EDGE_EM, WHOLE),
            Self::TouchingEdge => line(Ink::Touch, TOUCH_EM, WHOLE),
            Self::RubbingEdge => line(Ink::Rub, EDGE_EM, WHOLE),
            Self::TouchingSpot => line(Ink::Sheet, FINE_EM, WHOLE),
            Self::Disc | Self::DiscLit => line(Ink::Touch, EDGE_EM, WHOLE),
            Self::DiscLeader => line(Ink::Touch, FINE_EM, WHOLE),
            Self::Lit => line(Ink::Lit, GLOW_EM, WHOLE),
            Self::Leader => line(Ink::InkSoft, FINE_EM, WHOLE),
            Self::Heavy | Self::Force | Self::Grip | Self::Rim => line(Ink::Ink, HEAVY_EM, WHOLE),
            Self::GripEnd => line(Ink::Ink, EDGE_EM, WHOLE),
            Self::GripPath => line(Ink::Ink, EDGE_EM, DOTS_EM),
            Self::Ghost => line(Ink::Ink, FINE_EM, TWO_DOTS_EM),
            _ => None,
        }
    }
}
