//! What a scene is made of: items over one flat buffer of path steps and one flat text.

use core::ops::Range;

use super::role::Role;
use crate::contact::{Body, Contact};
use crate::plane::Point;

/// One drawn thing. Items lie in the order of painting, back to front.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What it stands for.
    pub id: Id,
    /// Which group it belongs to; a group can be left out.
    pub layer: Layer,
    /// How it is painted.
    pub role: Role,
    /// What is painted.
    pub shape: Shape,
    /// The circle of [`super::Scene::clips`] outside which nothing of it shows.
    pub clip: Option<usize>,
}

/// The form of an item.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A range of [`super::Scene::steps`]: filled by the even-odd rule, then stroked, as its role
    /// says. A ring is two loops.
    Path(Range<usize>),
    /// A text.
    Text(Text),
}

/// One line of text, upright. The scene reserves [`CHARACTER_EM`] of its size for each character.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// The anchor, em: on the baseline, at the place that `align` names.
    pub at: Point,
    /// Where along the line the anchor is.
    pub align: Align,
    /// How large.
    pub size: Size,
    /// The range of bytes of [`super::Scene::text`].
    pub letters: Range<usize>,
}

/// The width reserved for a character, as a share of the text's size: a plain figure of the widest
/// usual font takes 0.636. A bold one takes 0.696, but stands among narrower points and signs.
pub const CHARACTER_EM: f64 = 0.64;

/// Which place of a line of text its anchor is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    /// The left end.
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

/// How large a text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Size {
    /// 1 em.
    Body,
    /// 1 em, bold.
    Strong,
    /// A little smaller.
    Small,
    /// A little smaller, bold: the number in a disc, the letter of a cut.
    SmallStrong,
}

impl Size {
    /// The height of the letters' square, em.
    pub fn em(self) -> f64 {
        match self {
            Self::Body | Self::Strong => 1.0,
            Self::Small | Self::SmallStrong => 0.88,
        }
    }

    /// Whether the letters are bold.
    pub fn is_bold(self) -> bool {
        matches!(self, Self::Strong | Self::SmallStrong)
    }
}

/// What an item stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Id {
    /// A rigid body.
    Body(Body),
    /// A contact: its edge, its disc, its number.
    Contact(Contact),
    /// A dimension line, by the key of what it measures.
    Dimension(&'static str),
    /// A word or mark of the drawing itself: axis, cut letter, scale bar, wall.
    Mark(&'static str),
    /// Something that can be taken hold of.
    Grip(&'static str),
}

impl Id {
    /// The id as text, such as `body.held` or `contact.first.pin-bore.far.right`.
    pub fn text(&self) -> String {
        match self {
            Self::Body(body) => format!("body.{}", body.key()),
            Self::Contact(contact) => format!("contact.{}", contact.id()),
            Self::Dimension(key) => format!("dimension.{key}"),
            Self::Mark(key) => format!("mark.{key}"),
            Self::Grip(key) => format!("grip.{key}"),
        }
    }
}

/// A group of items that can be shown or left out together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// Wall, axes.
    Ground,
    /// Fills and edges of parts.
    Metal,
    /// Section lines.
    Section,
    /// Centre lines, over the metal.
    Centre,
    /// Touching and rubbing edges, overlaps, discs.
    Marks,
    /// Dimension lines and their numbers.
    Dimensions,
    /// Names of parts and views, letters of cuts, the scale bar.
    Labels,
    /// Forces, their numbers and their scale.
    Forces,
    /// Grips.
    Grips,
}

impl Layer {
    /// The key by which a layer is left out.
    pub fn key(self) -> &'static str {
        match self {
            Self::Ground => "ground",
            Self::Metal => "metal",
            Self::Section => "section",
            Self::Centre => "centre",
            Self::Marks => "marks",
            Self::Dimensions => "dimensions",
            Self::Labels => "labels",
            Self::Forces => "forces",
            Self::Grips => "grips",
        }
    }
}

/// Whose colour: one for each thing that moves together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tint {
    /// The outer link that is held.
    Held,
    /// The inner link; of a collared one, its far plate.
    Inner,
    /// The near plate of a collared inner link.
    InnerNear,
    /// The next outer link.
    Next,
    /// A roller.
    Roller,
}

impl Tint {
    /// Every tint.
    pub const ALL: &'static [Self] =
        &[Self::Held, Self::Inner, Self::InnerNear, Self::Next, Self::Roller];

    /// The key in names of colours.
    pub fn key(self) -> &'static str {
        match self {
            Self::Held => "held",
            Self::Inner => "inner",
            Self::InnerNear => "inner-near",
            Self::Next => "next",
            Self::Roller => "roller",
        }
    }
}

/// A named colour; what it looks like is the theme's affair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ink {
    /// The sheet itself.
    Sheet,
    /// Lines and figures.
    Ink,
    /// Lesser lines and notes.
    InkSoft,
    /// What touches.
    Touch,
    /// What touches and moves.
    Rub,
    /// Metal that overlaps.
    Overlap,
    /// What is pointed at.
    Lit,
    /// A sheet of paper shown for scale.
    Paper,
    /// The pale fill of a body.
    Fill(Tint),
    /// Edges, section lines and the name of a body.
    Edge(Tint),
}

impl Ink {
    /// Every ink.
    pub fn all() -> impl Iterator<Item = Self> {
        let plain = [
            Self::Sheet,
            Self::Ink,
            Self::InkSoft,
            Self::Touch,
            Self::Rub,
            Self::Overlap,
            Self::Lit,
            Self::Paper,
        ];
        let tinted = Tint::ALL.iter().flat_map(|&tint| [Self::Fill(tint), Self::Edge(tint)]);
        plain.into_iter().chain(tinted)
    }

    /// The name in a theme, such as `ink-soft` or `fill-held`.
    pub fn key(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Ink => "ink",
            Self::InkSoft => "ink-soft",
            Self::Touch => "touch",
            Self::Rub => "rub",
            Self::Overlap => "overlap",
            Self::Lit => "lit",
            Self::Paper => "paper",
            Self::Fill(Tint::Held) => "fill-held",
            Self::Fill(Tint::Inner) => "fill-inner",
            Self::Fill(Tint::InnerNear) => "fill-inner-near",
            Self::Fill(Tint::Next) => "fill-next",
            Self::Fill(Tint::Roller) => "fill-roller",
            Self::Edge(Tint::Held) => "edge-held",
            Self::Edge(Tint::Inner) => "edge-inner",
            Self::Edge(Tint::InnerNear) => "edge-inner-near",
            Self::Edge(Tint::Next) => "edge-next",
            Self::Edge(Tint::Roller) => "edge-roller",
        }
    }
}
