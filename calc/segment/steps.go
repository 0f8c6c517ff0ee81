package segment

import (
	"math"

	"gaugewright/calc/quantity"
)

// Step is the step in which lengths are added: 0.1 mm [m]. Our own choice: ten
// times finer than anybody measures a pile.
const Step quantity.Length = 0.0001

// StepSlack is how far above a whole step a need may lie, and how far below
// one a piece, to be taken as that step: a thousandth of a step, 0.1
// micrometre [m]. Our own choice. It swallows the last bits of a difference of
// levels (below 1e-11 m within 10 km of the datum) and nothing that a person
// can state.
const StepSlack quantity.Length = Step / 1000

const (
	stepsPerMetre = 10000
	slackInSteps  = 1e-3
)

// NeedTenths returns a needed length in tenths of a millimetre, rounded UP with
// [StepSlack]: 6.1 m is 61000, 6.10001 m is 61001. The length must be above
// zero and at most 1000 m; else the error is an [*InputError].
func NeedTenths(length quantity.Length) (int64, error) {
	x := float64(length)
	switch {
	case x-x != 0:
		return 0, &InputError{Code: "segment.notFinite", Symbol: "L_need", Line: -1, Value: x}
	case x <= 0:
		e := fault("segment.need")
		e.Value = x
		return 0, e
	case x > longestNeed/stepsPerMetre:
		return 0, &InputError{Code: "segment.tooLong", Symbol: "L_need", Line: -1, Value: x, Limit: longestNeed / stepsPerMetre}
	}
	// A need within the slack of nothing is still a need.
	return max(1, int64(math.Ceil(float64(x*stepsPerMetre)-slackInSteps))), nil
}

// PieceTenths returns the length of a piece, or a price in metres of pile, in
// tenths of a millimetre, rounded DOWN with [StepSlack]: 6.1 m is 61000,
// 6.09999 m is 60999. It must be at least zero and at most 1000 m; else the
// error is an [*InputError].
func PieceTenths(length quantity.Length) (int64, error) {
	x := float64(length)
	code := ""
	switch {
	case x-x != 0:
		code = "segment.notFinite"
	case x < 0:
		code = "segment.negative"
	case x > longestNeed/stepsPerMetre:
		code = "segment.tooLong"
	default:
		return int64(math.Floor(float64(x*stepsPerMetre) + slackInSteps)), nil
	}
	return 0, &InputError{Code: code, Symbol: "l", Line: -1, Value: x, Limit: longestNeed / stepsPerMetre}
}

// Metres returns tenths of a millimetre as a length: the float64 nearest to
// the exact value, so that 61000 is the same number as a typed 6.1 m.
func Metres(tenths int64) quantity.Length {
	return quantity.Length(float64(tenths) / stepsPerMetre)
}
