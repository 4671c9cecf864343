//! Structs that are nothing but numbers, each field written down once.

/// Declares a struct of numbers, and after them at most one other such struct, with its values in the
/// order of the fields and the way back from them.
macro_rules! numbers {
    (
        $(#[$about:meta])*
        pub struct $name:ident {
            $($(#[$of:meta])* pub $field:ident: f64,)*
        }
        $(then {
            $(#[$last_of:meta])* pub $last:ident: $more:ident,
        })?
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
        pub struct $name {
            $($(#[$of])* pub $field: f64,)*
            $($(#[$last_of])* pub $last: $more,)?
        }

        impl $name {
            /// How many of the fields are numbers of its own.
            const OWN: usize = [$(stringify!($field)),*].len();
            /// How many numbers it holds.
            pub const COUNT: usize = Self::OWN $(+ $more::COUNT)?;

            /// Every value, in the order of the fields.
            pub fn values(&self) -> [f64; Self::COUNT] {
                let mut all = [0.0; Self::COUNT];
                all[..Self::OWN].copy_from_slice(&[$(self.$field),*]);
                $(all[Self::OWN..].copy_from_slice(&self.$last.values());)?
                all
            }
        }

        impl From<[f64; $name::COUNT]> for $name {
            /// From its values, in the order of the fields.
            fn from(values: [f64; $name::COUNT]) -> Self {
                let [$($field,)* $($last @ ..)?] = values;
                Self { $($field,)* $($last: $more::from($last),)? }
            }
        }
    };
}
pub(super) use numbers;
