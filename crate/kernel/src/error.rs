//! What is wrong with an input: the field, the value it was given, and the rule it breaks.
//!
//! No prose lives here. A reader of the page or of the command line sees the sentence that the
//! word list keeps under [`Rule::id`], filled with [`Rule::terms`].

/// One rejected input.
#[derive(Debug, Clone, PartialEq)]
pub struct Error {
    /// The full path of the field, such as `chain.pitch_mm`.
    pub field: String,
    /// What the field held.
    pub value: Given,
    /// The rule that it breaks.
    pub rule: Rule,
}

impl Error {
    /// An error about a number.
    pub fn number(field: &str, value: f64, rule: Rule) -> Self {
        Self { field: field.to_owned(), value: Given::Number(value), rule }
    }

    /// An error about a text.
    pub fn text(field: &str, value: &str, rule: Rule) -> Self {
        Self { field: field.to_owned(), value: Given::Text(value.to_owned()), rule }
    }

    /// An error about a text that cannot be read at a line and column, both from 1.
    pub fn syntax(field: &str, line: usize, column: usize) -> Self {
        let rule = Rule::Syntax { line, column };
        Self { field: field.to_owned(), value: Given::Nothing, rule }
    }

    /// The same error, told from one level further out: `pitch_mm` becomes `chain.pitch_mm`.
    #[must_use]
    pub fn within(mut self, section: &str) -> Self {
        self.field = if self.field.is_empty() {
            section.to_owned()
        } else {
            [section, ".", &self.field].concat()
        };
        self
    }
}

/// The value that a field was given.
#[derive(Debug, Clone, PartialEq)]
pub enum Given {
    /// The field is absent.
    Nothing,
    /// A number, in the unit that the field's name ends in.
    Number(f64),
    /// A text, or the kind of thing found where another was expected.
    Text(String),
}

/// A rule that an input must keep. Limits are in the unit of the field.
#[derive(Debug, Clone, PartialEq)]
pub enum Rule {
    /// The number must be finite.
    Finite,
    /// The number must be greater than zero.
    Positive,
    /// The number must not be negative.
    NotNegative,
    /// The number must not exceed `limit`.
    AtMost {
        /// The largest allowed value.
        limit: f64,
    },
    /// The number must not be less than `limit`.
    AtLeast {
        /// The smallest allowed value.
        limit: f64,
    },
    /// The number must be less than another size.
    BelowSize {
        /// The value of the other size, or of the expression in `of`.
        limit: f64,
        /// The word id of the other size or expression.
        of: &'static str,
    },
    /// The number must not exceed another size.
    AtMostSize {
        /// The value of the other size, or of the expression in `of`.
        limit: f64,
        /// The word id of the other size or expression.
        of: &'static str,
    },
    /// The number must be greater than another size.
    AboveSize {
        /// The value of the other size, or of the expression in `of`.
        limit: f64,
        /// The word id of the other size or expression.
        of: &'static str,
    },
    /// The number must not be less than another size.
    AtLeastSize {
        /// The value of the other size, or of the expression in `of`.
        limit: f64,
        /// The word id of the other size or expression.
        of: &'static str,
    },
    /// The number must be whole.
    Whole,
    /// The field is required.
    Missing,
    /// Nothing of that name is known here.
    UnknownKey,
    /// The field holds another kind of thing than expected.
    WrongKind {
        /// The expected kind: `number`, `text`, `list`, `object`, `length`.
        expected: &'static str,
    },
    /// The text must be one of a few.
    OneOf {
        /// The allowed texts.
        choices: &'static [&'static str],
    },
    /// Exactly one of two groups of fields must be given.
    ExactlyOne {
        /// The two groups, in words of the format.
        choices: &'static [&'static str],
    },
    /// At least one of these fields must be given.
    AtLeastOne {
        /// The fields.
        choices: &'static [&'static str],
    },
    /// The text must say something.
    NotEmpty,
    /// The text must not be longer.
    AtMostCharacters {
        /// The largest allowed count.
        limit: f64,
    },
    /// The list must not be longer.
    AtMostItems {
        /// The largest allowed count.
        limit: f64,
    },
    /// What is named here is named already.
    Repeated,
    /// The text must be the key of a dimension.
    KnownDimension,
    /// The text must be the key of a quantity.
    KnownQuantity,
    /// The text must be the id of a contact.
    KnownContact,
    /// The text of the file itself cannot be read.
    Syntax {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
}

/// A value that fills a place in a rule's sentence.
#[derive(Debug, Clone, PartialEq)]
pub enum Term {
    /// A number in the unit of the field.
    Number(f64),
    /// The id of a word.
    Word(&'static str),
    /// A text to show as it is.
    Text(String),
}

impl Rule {
    /// The id of the rule's sentence.
    pub fn id(&self) -> &'static str {
        match self {
            Self::Finite => "finite",
            Self::Positive => "positive",
            Self::NotNegative => "not_negative",
            Self::AtMost { .. } => "at_most",
            Self::AtLeast { .. } => "at_least",
            Self::BelowSize { .. } => "below_size",
            Self::AtMostSize { .. } => "at_most_size",
            Self::AboveSize { .. } => "above_size",
            Self::AtLeastSize { .. } => "at_least_size",
            Self::Whole => "whole",
            Self::Missing => "missing",
            Self::UnknownKey => "unknown_key",
            Self::WrongKind { .. } => "wrong_kind",
            Self::OneOf { .. } => "one_of",
            Self::ExactlyOne { .. } => "exactly_one",
            Self::AtLeastOne { .. } => "at_least_one",
            Self::NotEmpty => "not_empty",
            Self::AtMostCharacters { .. } => "at_most_characters",
            Self::AtMostItems { .. } => "at_most_items",
            Self::Repeated => "repeated",
            Self::KnownDimension => "known_dimension",
            Self::KnownQuantity => "known_quantity",
            Self::KnownContact => "known_contact",
            Self::Syntax { .. } => "syntax",
        }
    }

    /// What fills the places of the rule's sentence, by name.
    pub fn terms(&self) -> Vec<(&'static str, Term)> {
        match self {
            Self::AtMost { limit }
            | Self::AtLeast { limit }
            | Self::AtMostCharacters { limit }
            | Self::AtMostItems { limit } => vec![("limit", Term::Number(*limit))],
            Self::BelowSize { limit, of }
            | Self::AtMostSize { limit, of }
            | Self::AboveSize { limit, of }
            | Self::AtLeastSize { limit, of } => {
                vec![("limit", Term::Number(*limit)), ("of", Term::Word(of))]
            }
            Self::WrongKind { expected } => vec![("expected", Term::Word(expected))],
            Self::OneOf { choices }
            | Self::ExactlyOne { choices }
            | Self::AtLeastOne { choices } => vec![("choices", Term::Text(choices.join(", ")))],
            Self::Syntax { line, column } => vec![
                ("line", Term::Text(line.to_string())),
                ("column", Term::Text(column.to_string())),
            ],
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_grows_from_the_inside_out() {
        let error = Error::number("pitch_mm", -1.0, Rule::Positive).within("chain");
        assert_eq!(error.field, "chain.pitch_mm");
        assert_eq!(Error::text("", "x", Rule::Missing).within("chain").field, "chain");
    }
}
