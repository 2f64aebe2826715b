//! All that is answered: one table of routes, who may call each, and what is on every answer.

mod about;
mod body;
mod enrolling;
mod guard;
pub mod openapi;
mod pages;
mod phones;
mod photos;
pub mod routes;
pub mod serve;

pub use about::AboutOffice;
pub use routes::{ApiRoute, Who, router, routes};
