//! What the papers would be: computed when it is looked at, never kept.
