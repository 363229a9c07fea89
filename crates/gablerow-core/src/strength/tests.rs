//! Strength against published and worked values.
