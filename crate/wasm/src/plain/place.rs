//! What becomes of each kind of value at its place.

use super::{Never, Parts, Place, never, put, put_number, put_text};
use js_sys::{Array, Object};
use serde::Serialize;
use serde::ser::{Impossible, Serializer};
use wasm_bindgen::JsValue;

/// What is never filled.
type Nothing = Impossible<(), Never>;

/// Methods of a serializer: a kind of value, and what becomes of it.
macro_rules! told {
    ($self:ident, $value:ident; $( $method:ident $kind:ty => $done:expr ; )+) => {
        $( fn $method($self, $value: $kind) -> Result<(), Never> {
            $done;
            Ok(())
        } )+
    };
}

impl Serializer for Place<'_> {
    type Ok = ();
    type Error = Never;
    type SerializeSeq = Parts;
    type SerializeTuple = Parts;
    type SerializeTupleStruct = Nothing;
    type SerializeTupleVariant = Nothing;
    type SerializeMap = Parts;
    type SerializeStruct = Parts;
    type SerializeStructVariant = Nothing;

    told! { self, value;
        serialize_i8 i8 => put_number(self.whole, self.name, value.into());
        serialize_i16 i16 => put_number(self.whole, self.name, value.into());
        serialize_i32 i32 => put_number(self.whole, self.name, value.into());
        serialize_i64 i64 => put_number(self.whole, self.name, value as f64);
        serialize_u8 u8 => put_number(self.whole, self.name, value.into());
        serialize_u16 u16 => put_number(self.whole, self.name, value.into());
        serialize_u32 u32 => put_number(self.whole, self.name, value.into());
        serialize_u64 u64 => put_number(self.whole, self.name, value as f64);
        serialize_f32 f32 => put_number(self.whole, self.name, value.into());
        serialize_f64 f64 => put_number(self.whole, self.name, value);
        serialize_bool bool => put(self.whole, self.name, &value.into());
        serialize_char char => put_text(self.whole, self.name, value.encode_utf8(&mut [0; 4]));
        serialize_str &str => put_text(self.whole, self.name, value);
        serialize_unit_struct &'static str => { let _ = value; put(self.whole, self.name, &JsValue::NULL) };
    }

    fn serialize_bytes(self, _: &[u8]) -> Result<(), Never> {
        never()
    }

    fn serialize_none(self) -> Result<(), Never> {
        self.serialize_unit()
    }

    fn serialize_unit(self) -> Result<(), Never> {
        put(self.whole, self.name, &JsValue::NULL);
        Ok(())
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Never> {
        value.serialize(self)
    }

    fn serialize_unit_variant(self, _: &str, _: u32, word: &'static str) -> Result<(), Never> {
        self.serialize_str(word)
    }

    fn serialize_newtype_struct<T>(self, _: &str, value: &T) -> Result<(), Never>
    where
        T: Serialize + ?Sized,
    {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T>(self, _: &str, _: u32, _: &str, _: &T) -> Result<(), Never>
    where
        T: Serialize + ?Sized,
    {
        never()
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Parts, Never> {
        Ok(Parts::at(self, Array::new().into()))
    }

    fn serialize_tuple(self, _: usize) -> Result<Parts, Never> {
        Ok(Parts::at(self, Array::new().into()))
    }

    fn serialize_tuple_struct(self, _: &str, _: usize) -> Result<Nothing, Never> {
        never()
    }

    fn serialize_tuple_variant(self, _: &str, _: u32, _: &str, _: usize) -> Result<Nothing, Never> {
        never()
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Parts, Never> {
        Ok(Parts::at(self, Object::new().into()))
    }

    fn serialize_struct(self, _: &str, _: usize) -> Result<Parts, Never> {
        Ok(Parts::at(self, Object::new().into()))
    }

    fn serialize_struct_variant(
        self,
        _: &str,
        _: u32,
        _: &str,
        _: usize,
    ) -> Result<Nothing, Never> {
        never()
    }
}
