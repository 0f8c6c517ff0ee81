package calibration

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// From manyDF degrees of freedom on the quantile is taken from its expansion
// about the normal one, off by less than one part in 10^12 there; from asNormal
// on a chance is taken as normal.
const (
	manyDF   = 1e4
	asNormal = 1e8
)

// Coverage returns k such that a Student variable with nu degrees of freedom
// stays within -k and k with the probability level: the quantile of
// (1 + level)/2. nu > 0 need not be whole and may be infinite; 0 < level < 1.
//
// Source: the distribution is that of JCGM 100:2008, annex G.3, taken from
// gonum's incomplete beta function, whose inverse two steps of Newton's method
// sharpen. With very many degrees of freedom the function itself loses digits,
// and k comes from M. Abramowitz, I. A. Stegun, Handbook of Mathematical
// Functions, 26.7.5 (from memory).
func Coverage(level, nu float64) float64 {
	if nu >= manyDF {
		z := mathext.NormalQuantile((1 + level) / 2)
		z2 := float64(z * z)
		return z + z*(z2+1)/(4*nu) + z*(float64((float64(5*z2)+16)*z2)+3)/(96*nu)/nu
	}
	w := mathext.InvRegIncBeta(0.5, nu/2, level)
	k := math.Sqrt(nu * w / (1 - w))
	above, _ := math.Lgamma((nu + 1) / 2)
	below, _ := math.Lgamma(nu / 2)
	for range 2 {
		density := 2 * math.Exp(above-below-(nu+1)/2*math.Log1p(float64(k*k)/nu)) / math.Sqrt(nu*math.Pi)
		k -= (within(k, nu) - level) / density
	}
	return k
}

// within is the chance to stay within -t and t. The share of t^2 in nu + t^2 is
// handed over rather than its complement, which would lose digits where nu is
// large.
func within(t, nu float64) float64 {
	return mathext.RegIncBeta(0.5, nu/2, float64(t*t)/(nu+float64(t*t)))
}

// Beyond returns the chance that a Student variable with nu degrees of freedom
// is above t; t may be negative, nu infinite.
func Beyond(t, nu float64) float64 {
	switch {
	case nu >= asNormal:
		return math.Erfc(t/math.Sqrt2) / 2
	case t < 0:
		return 1 - Beyond(-t, nu)
	}
	return mathext.RegIncBeta(nu/2, 0.5, nu/(nu+float64(t*t))) / 2
}

// BeyondF returns the chance that a ratio of two independent estimates of one
// variance, with d1 and d2 degrees of freedom, is above f >= 0.
func BeyondF(f, d1, d2 float64) float64 {
	return mathext.RegIncBeta(d2/2, d1/2, d2/(d2+float64(d1*f)))
}
