//! Sums of squares of neighbouring unknowns, made least: symmetric systems five wide.
//!
//! Each term is ½ w (c · z − target)² with c over up to three neighbours. The normal equations are
//! solved by one pass of L D Lᵀ without pivots, which a positive definite system does not need.

/// Most unknowns.
pub const MOST: usize = 64;

/// The normal equations under construction: diagonal, first and second upper diagonals, right side.
pub struct Band {
    n: usize,
    d: [f64; MOST],
    e: [f64; MOST],
    f: [f64; MOST],
    b: [f64; MOST],
}

impl Band {
    /// Of `n` unknowns, no term yet.
    pub fn new(n: usize) -> Self {
        Self {
            n,
            d: [0.0; MOST],
            e: [0.0; MOST],
            f: [0.0; MOST],
            b: [0.0; MOST],
        }
    }

    /// Adds ½ w (z_i − target)².
    #[inline(always)]
    pub fn one(&mut self, i: usize, w: f64, target: f64) {
        self.d[i] += w;
        self.b[i] += w * target;
    }

    /// Adds ½ w (c · (z_{i−1}, z_i, z_{i+1}) − target)².
    #[inline(always)]
    pub fn three(&mut self, i: usize, c: [f64; 3], w: f64, target: f64) {
        let [a, m, z] = c;
        self.d[i - 1] += w * a * a;
        self.d[i] += w * m * m;
        self.d[i + 1] += w * z * z;
        self.e[i - 1] += w * a * m;
        self.e[i] += w * m * z;
        self.f[i - 1] += w * a * z;
        self.b[i - 1] += w * a * target;
        self.b[i] += w * m * target;
        self.b[i + 1] += w * z * target;
    }

    /// The least sum, with the first two unknowns held at `first`.
    #[inline]
    pub fn solve(&mut self, first: [f64; 2], z: &mut [f64; MOST]) {
        let n = self.n;
        z[0] = first[0];
        z[1] = first[1];
        if n < 3 {
            return;
        }
        self.b[2] -= self.e[1] * first[1] + self.f[0] * first[0];
        if n > 3 {
            self.b[3] -= self.f[1] * first[1];
        }
        // Forward: d becomes D, e and f the columns of L.
        for i in 2..n {
            let d = 1.0 / self.d[i];
            if i + 1 < n {
                let l = self.e[i] * d;
                self.d[i + 1] -= l * self.e[i];
                if i + 2 < n {
                    self.e[i + 1] -= l * self.f[i];
                }
                self.b[i + 1] -= l * self.b[i];
                self.e[i] = l;
            }
            if i + 2 < n {
                let l = self.f[i] * d;
                self.d[i + 2] -= l * self.f[i];
                self.b[i + 2] -= l * self.b[i];
                self.f[i] = l;
            }
            self.b[i] *= d;
        }
        for i in (2..n).rev() {
            let mut v = self.b[i];
            if i + 1 < n {
                v -= self.e[i] * z[i + 1];
            }
            if i + 2 < n {
                v -= self.f[i] * z[i + 2];
            }
            z[i] = v;
        }
    }
}
