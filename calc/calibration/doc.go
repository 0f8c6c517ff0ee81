// Package calibration knows what a certificate of calibration says: a curve
// through its points, what the curve leaves in doubt, and how independent doubts
// come together. It knows nothing of rigs and piles.
//
// A certificate lists pairs of a quantity that was set, x, and one that was
// observed, y. Least squares takes x as known and y as scattered, so the
// observed quantity is fitted on the set one ([Fit]). From x to y one goes
// directly ([Curve.Predict]), from y to x by the inverse ([Curve.Inverse]);
// swapping the two in the fit would bias the slope by the scatter.
//
// # Least squares without matrices
//
// The fit uses the orthogonal polynomials of the points (Forsythe 1957):
//
//	f(x) = y_m + c_1 z + c_2 q,  z = (x - x_m)/r,  q = z^2 - alpha z - beta
//
// with r half the range of the set values, so that all but y and c are plain
// numbers about one. They need no linear algebra, are as exact as an orthogonal decomposition, and
// every number on the way has a formula that a reviewer can evaluate: no
// coefficient is taken on trust from a solver. They are also small. Measured on
// the page, compressed: gonum's mat with its QR would cost 144 kB, the line of
// stat 90 kB, stat/distuv 96 kB, since they bring fmt with them, and lapack64
// 33 kB; mathext, from which t and F are taken here, costs 11 kB.
// Sums run from the first point to the last in plain float64, so that native
// code, the page and the working's evaluator agree bit for bit; gonum's
// floats.Dot adds in four lanes where the processor can. The tests hold the
// whole against gonum's QR and against values published by NIST.
//
// # What is not covered
//
// Doubt in x (a reference error shared by all points is a term of its own
// beside the fit), points of unequal weight, curves above the second degree, and
// hysteresis as a doubt: the falling run is compared ([Compare]), not fitted.
package calibration
