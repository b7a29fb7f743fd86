//! What is left out of a picture.

use super::Picture;
use crate::contact::Contact;
use crate::scene::{Id, Item};
use crate::stage::Stage;

/// The layers and contacts that are left out.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hidden {
    layers: Vec<String>,
    contacts: Vec<Contact>,
}

impl Hidden {
    /// What ids of contacts and keys of layers name; a name of nothing hides nothing.
    pub fn of(stage: &Stage, names: Vec<String>) -> Self {
        let mut hidden = Self::default();
        for name in names {
            match Picture::item_of(stage, &name) {
                Some(Id::Contact(contact)) => hidden.contacts.push(contact),
                _ => hidden.layers.push(name),
            }
        }
        hidden
    }

    /// Whether an item is shown.
    pub fn shows(&self, item: &Item) -> bool {
        let held_back = match item.id {
            Id::Contact(contact) => self.contacts.contains(&contact),
            _ => false,
        };
        !held_back && !self.layers.iter().any(|key| key == item.layer.key())
    }
}
