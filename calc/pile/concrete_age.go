package pile

import (
	"math"
	"strings"

	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Days is the age of concrete [d], a plain number.
type Days float64

// FullAge is the age from which the characteristic strength counts, and
// YoungestAge the one above which it may be computed before that.
const (
	FullAge     Days = 28
	YoungestAge Days = 3
)

// hardenings are the three kinds of cement, by the words of a job file.
var hardenings = []string{"slow", "normal", "rapid"}

// HardeningFigure returns the id in calc/basis of the coefficient s for the
// hardening "slow" (class S, CEM 32,5 N), "normal" (class N, CEM 32,5 R and
// 42,5 N) or "rapid" (class R, CEM 42,5 R, 52,5 N and 52,5 R). The error is an
// [*InputError] with the code "pile.hardeningUnknown".
// Source: EN 1992-1-1:2004, 3.1.2 (6).
func HardeningFigure(hardening string) (string, error) {
	for _, h := range hardenings {
		if h == hardening {
			return "concrete.hardening." + h, nil
		}
	}
	return "", &InputError{Code: "pile.hardeningUnknown", Text: hardening,
		Allowed: strings.Join(hardenings, ", "), Example: "normal"}
}

// Aged is the strength of concrete at an age, with the steps to it.
type Aged struct {
	Mean     quantity.Pressure // f_cm: mean strength at 28 days
	Share    quantity.Ratio    // beta_cc(t): part of it that is there
	Strength quantity.Pressure // f_ck(t): characteristic strength at the age
}

// StrengthAt returns the characteristic strength of a cylinder at the age t.
//
//	f_cm    = f_ck + 8 MPa
//	beta    = exp(s (1 - sqrt(28/min(t, 28))))
//	f_ck(t) = beta f_cm - 8 MPa
//
// f_ck: characteristic strength at 28 days, 12 to 90 MPa, the classes of Table
// 3.1 (here in kPa); t > 3 days; from 28 days on f_ck(t) is f_ck and no later
// gain is counted. s by [HardeningFigure]. At 3 days and below there is no
// computed strength: give a test. The error is an [*InputError] with, for
// that, the code "pile.tooYoung".
// Source: EN 1992-1-1:2004, 3.1.2 (5) and (6), at a mean temperature of 20 C
// and curing by EN 12390. Not covered: cold weather, heat curing (10.3.1.1),
// concrete that missed its 28-day strength; a test is the better figure.
func StrengthAt(fck quantity.Pressure, hardening string, t Days) (Aged, error) {
	figure, err := HardeningFigure(hardening)
	if err != nil {
		return Aged{}, err
	}
	mean, err := MeanStrength(fck)
	if err != nil {
		return Aged{}, err
	}
	age := number{"t", float64(t), quantity.Dimensionless, "7"}
	if err := age.finite(); err != nil {
		return Aged{}, err
	}
	if t <= YoungestAge {
		return Aged{}, age.fault("pile.tooYoung", float64(YoungestAge))
	}
	if t >= FullAge {
		return Aged{Mean: mean, Share: 1, Strength: fck}, nil
	}
	beta := math.Exp(basis.Figure(figure) * (1 - math.Sqrt(float64(FullAge/t))))
	return Aged{Mean: mean, Share: quantity.Ratio(beta),
		Strength: quantity.Pressure(float64(beta*float64(mean)) - basis.Figure("concrete.meanMargin"))}, nil
}

// MeanStrength returns the mean strength f_cm = f_ck + 8 MPa of concrete with
// the characteristic strength f_ck of a cylinder, 12 to 90 MPa (here in kPa).
// The error is an [*InputError]. Source: EN 1992-1-1:2004, Table 3.1.
func MeanStrength(fck quantity.Pressure) (quantity.Pressure, error) {
	if err := stress("f_ck", fck, "40 MPa").within(float64(classes[0].Cylinder), float64(classes[len(classes)-1].Cylinder)); err != nil {
		return 0, err
	}
	return fck + quantity.Pressure(basis.Figure("concrete.meanMargin")), nil
}

var (
	symbolMean   = working.Symbol{Name: "f_cm", Dim: quantity.Pressures, Key: "meanStrength"}
	symbolMargin = working.Symbol{Name: "df", Dim: quantity.Pressures, Key: "meanMargin"}
)

// The rules of the strength at an age. Inputs: f_ck, df for the mean; s, t for
// the share; beta, f_cm, df for the strength. df is the figure
// "concrete.meanMargin", s that of [HardeningFigure]. The formula language
// has no exp; the number in the rule of the share is its base.
var (
	MeanStrengthRule = working.Rule{Key: "pile.concrete.mean", Symbol: "f_cm", Formula: "f_ck + df",
		Inputs: []working.Symbol{{Name: "f_ck", Dim: quantity.Pressures, Key: "cylinderStrength"}, symbolMargin},
		Dim:    quantity.Pressures, Decimals: 1, Basis: "concrete.mean"}
	AgeShareRule = working.Rule{Key: "pile.concrete.share", Symbol: "beta", Formula: "2.718281828459045^(s*(1 - sqrt(28/min(t, 28))))",
		Inputs: []working.Symbol{{Name: "s", Dim: quantity.Dimensionless, Key: "hardening"}, {Name: "t", Dim: quantity.Dimensionless, Key: "ageDays"}},
		Dim:    quantity.Dimensionless, Decimals: 4, Basis: "concrete.age"}
	AgedStrengthRule = working.Rule{Key: "pile.concrete.aged", Symbol: "f_ck_t", Formula: "beta*f_cm - df",
		Inputs: []working.Symbol{{Name: "beta", Dim: quantity.Dimensionless, Key: "ageShare"}, symbolMean, symbolMargin},
		Dim:    quantity.Pressures, Decimals: 1, Basis: "concrete.age"}
)
