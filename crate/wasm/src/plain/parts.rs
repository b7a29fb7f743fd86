//! How lists and objects are filled, one value after the other.

use super::{Never, Parts, plain};
use serde::Serialize;
use serde::ser::{SerializeMap, SerializeSeq, SerializeStruct, SerializeTuple};

impl SerializeSeq for Parts {
    type Ok = ();
    type Error = Never;

    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        self.item(value)
    }

    fn end(self) -> Result<(), Never> {
        Ok(())
    }
}

impl SerializeTuple for Parts {
    type Ok = ();
    type Error = Never;

    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        self.item(value)
    }

    fn end(self) -> Result<(), Never> {
        Ok(())
    }
}

impl SerializeStruct for Parts {
    type Ok = ();
    type Error = Never;

    fn serialize_field<T>(&mut self, name: &'static str, value: &T) -> Result<(), Never>
    where
        T: Serialize + ?Sized,
    {
        self.member(name, value)
    }

    fn end(self) -> Result<(), Never> {
        Ok(())
    }
}

impl SerializeMap for Parts {
    type Ok = ();
    type Error = Never;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Never> {
        self.key = plain(&key);
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        self.whole.name(&self.key, &plain(&value));
        Ok(())
    }

    fn end(self) -> Result<(), Never> {
        Ok(())
    }
}
