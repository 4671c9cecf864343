//! The ground as the engine is given it.
//!
//! Facets are a shape of the engine's own. Smooth ground goes through the door that it has for
//! shapes it does not know: asked where a ball touches, the answer is the exact closest point. What
//! follows from a touch stays the engine's.

use crate::settings::Shape as Kind;
use glam::DVec2;
use rapier2d_f64::geometry::{ContactData, ContactManifold, ContactManifoldData, NarrowPhase};
use rapier2d_f64::math::{Pose, Vector};
use rapier2d_f64::parry::query::details::{NormalConstraints, ShapeCastOptions};
use rapier2d_f64::parry::query::{
    ClosestPoints, Contact, ContactManifoldsWorkspace, DefaultQueryDispatcher,
    NonlinearRigidMotion, PersistentQueryDispatcher, QueryDispatcher, ShapeCastHit, ShapeDistance,
    ShapeIntersection, TrackedContact, Unsupported,
};
use rapier2d_f64::parry::shape::{PackedFeatureId, Polyline, PolylineFlags, Shape};
use sim::profile::{Piece, Profile};
use tests::curve::Curve;

/// Ground before the beginning of a line, m: the first piece goes on.
const BEFORE: f64 = 2.0;

/// Facets of smooth ground, m. They only say where about the ground is.
const ROUGHLY: f64 = 0.1;

pub fn to_engine(v: DVec2) -> Vector {
    Vector::new(v.x, v.y)
}

pub fn from_engine(v: Vector) -> DVec2 {
    DVec2::new(v.x, v.y)
}

/// A profile's ground to its first lip's edge as a polyline, and who looks for touches on it.
pub fn of(profile: &Profile, radius: f64, kind: Kind) -> (Polyline, NarrowPhase) {
    let smooth = Smooth {
        curve: Curve::over(profile, radius),
        radius,
    };
    match kind {
        Kind::Facets { length, one_sided } => {
            let flags = if one_sided {
                PolylineFlags::ORIENTED
            } else {
                PolylineFlags::empty()
            };
            (polyline(profile, length, flags), NarrowPhase::new())
        }
        Kind::Smooth => (
            polyline(profile, ROUGHLY, PolylineFlags::empty()),
            NarrowPhase::with_query_dispatcher(smooth.chain(DefaultQueryDispatcher)),
        ),
    }
}

/// Points on the pieces, with the air on the side that the engine takes for the outside.
fn polyline(profile: &Profile, longest: f64, flags: PolylineFlags) -> Polyline {
    let edge = profile.lips.first().map_or(f64::INFINITY, |l| l.edge.x);
    let first = &profile.pieces[0];
    let before = first.start - DVec2::from_angle(first.heading) * BEFORE;
    let mut points = vec![to_engine(before), to_engine(first.start)];
    let ridden = |p: &&Piece| p.start.x < edge - 1e-9;
    for p in profile.pieces.iter().take_while(ridden) {
        let facets = if p.curvature == 0.0 {
            1.0
        } else {
            (p.length / longest).ceil()
        };
        points.extend((1..=facets as u32).map(|i| {
            let along = p.length * f64::from(i) / facets;
            to_engine(p.point(along))
        }));
    }
    points.reverse();
    Polyline::with_flags(points, None, flags)
}

/// Finds where a ball of the wheels' radius touches.
struct Smooth {
    curve: Curve,
    radius: f64,
}

impl PersistentQueryDispatcher<ContactManifoldData, ContactData> for Smooth {
    fn contact_manifolds(
        &self,
        pos12: &Pose,
        a: &dyn Shape,
        b: &dyn Shape,
        prediction: f64,
        manifolds: &mut Vec<ContactManifold>,
        _: &mut Option<ContactManifoldsWorkspace>,
    ) -> Result<(), Unsupported> {
        let first = a.as_ball().is_some();
        if first == b.as_ball().is_some() {
            return Err(Unsupported);
        }
        let ball = if first { pos12.inverse() } else { *pos12 };
        if manifolds.is_empty() {
            manifolds.push(ContactManifold::new());
        }
        let manifold = &mut manifolds[0];
        let centre = from_engine(ball.translation);
        let near = self.curve.near(centre);
        let Some((apart, normal)) = near.filter(|(apart, _)| *apart <= prediction) else {
            manifold.points.clear();
            return Ok(());
        };
        let into = ball.rotation.inverse() * to_engine(-normal);
        let on_ground = to_engine(centre - normal * (self.radius + apart));
        let same = PackedFeatureId::face(0);
        let on_ball = into * self.radius;
        let touch = TrackedContact::flipped(on_ground, on_ball, same, same, apart, first);
        // A touch that goes on keeps its impulses.
        match manifold.points.first_mut() {
            Some(old) => old.copy_geometry_from(touch),
            None => manifold.points.push(touch),
        }
        let out = to_engine(normal);
        (manifold.local_n1, manifold.local_n2) = if first { (into, out) } else { (out, into) };
        Ok(())
    }

    fn contact_manifold_convex_convex(
        &self,
        _: &Pose,
        _: &dyn Shape,
        _: &dyn Shape,
        _: Option<&dyn NormalConstraints>,
        _: Option<&dyn NormalConstraints>,
        _: f64,
        _: &mut ContactManifold,
    ) -> Result<(), Unsupported> {
        Err(Unsupported)
    }
}

/// Nothing else is asked of smooth ground.
impl QueryDispatcher for Smooth {
    fn intersection_test(
        &self,
        _: &Pose,
        _: &dyn Shape,
        _: &dyn Shape,
    ) -> Result<ShapeIntersection, Unsupported> {
        Err(Unsupported)
    }

    fn distance(
        &self,
        _: &Pose,
        _: &dyn Shape,
        _: &dyn Shape,
    ) -> Result<ShapeDistance, Unsupported> {
        Err(Unsupported)
    }

    fn contact(
        &self,
        _: &Pose,
        _: &dyn Shape,
        _: &dyn Shape,
        _: f64,
    ) -> Result<Option<Contact>, Unsupported> {
        Err(Unsupported)
    }

    fn closest_points(
        &self,
        _: &Pose,
        _: &dyn Shape,
        _: &dyn Shape,
        _: f64,
    ) -> Result<ClosestPoints, Unsupported> {
        Err(Unsupported)
    }

    fn cast_shapes(
        &self,
        _: &Pose,
        _: Vector,
        _: &dyn Shape,
        _: &dyn Shape,
        _: ShapeCastOptions,
    ) -> Result<Option<ShapeCastHit>, Unsupported> {
        Err(Unsupported)
    }

    fn cast_shapes_nonlinear(
        &self,
        _: &NonlinearRigidMotion,
        _: &dyn Shape,
        _: &NonlinearRigidMotion,
        _: &dyn Shape,
        _: f64,
        _: f64,
        _: bool,
    ) -> Result<Option<ShapeCastHit>, Unsupported> {
        Err(Unsupported)
    }
}
