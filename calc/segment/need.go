package segment

import (
	"math"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// farthest bounds levels and lengths [m]: it keeps sums exact enough for the
// slack of [NeedTenths]. Our own choice; nobody presses a pile a kilometre up.
const farthest = 10000

// HeadAtSet returns the level of the pile head when the set is taken, the
// higher of what the cap needs and what the rig can still hold:
//
//	Z_h = max(Z_c + l_p, Z_p + h_g - u)
//
// Z_c cut-off level, the top of the trimmed concrete with the cap embedment
// included [m]; l_p bar projection above it [m], >= 0, 0 where none is needed;
// Z_p platform level [m]; h_g grip height [m], >= 0: the lowest level above the
// platform at which the head can still be held at the end of the stroke; u
// usable travel of the follower [m], >= 0, 0 where there is no follower.
// Levels are on the job's datum, up positive, within 10 km of it.
// The error is an [*InputError]. Source: geometry of the rig; common practice,
// no source. Not covered: an upper bound where the rig must walk over heads.
func HeadAtSet(cutoff, projection, platform, grip, follower quantity.Length) (quantity.Length, error) {
	if err := levels(level{"Z_c", cutoff, true}, level{"l_p", projection, false}, level{"Z_p", platform, true},
		level{"h_g", grip, false}, level{"u", follower, false}); err != nil {
		return 0, err
	}
	return max(cutoff+projection, platform+grip-follower), nil
}

// Need returns the length that the pile must have at least:
//
//	L_need = Z_h - Z_toe
//
// Z_h level of the head at set [m], see [HeadAtSet]; Z_toe founding level, the
// level of the toe at set [m]. The result is above zero; where it is not, the
// error is an [*InputError] with the code "segment.need". Source: geometry.
// A toe that goes deeper than the founding level to make its set is not
// covered: give the lowest level that is expected.
func Need(head, toe quantity.Length) (quantity.Length, error) {
	if err := levels(level{"Z_h", head, true}, level{"Z_toe", toe, true}); err != nil {
		return 0, err
	}
	need := head - toe
	if need <= 0 {
		e := fault("segment.need")
		e.Value = float64(need)
		return 0, e
	}
	return need, nil
}

type level struct {
	symbol string
	v      quantity.Length
	signed bool // may be negative
}

func levels(list ...level) error {
	for _, l := range list {
		v := float64(l.v)
		code := ""
		switch {
		case v-v != 0: // NaN and the infinities
			code = "segment.notFinite"
		case math.Abs(v) > farthest:
			code = "segment.tooLong"
		case v < 0 && !l.signed:
			code = "segment.negative"
		default:
			continue
		}
		return &InputError{Code: code, Symbol: l.symbol, Line: -1, Value: v, Limit: farthest}
	}
	return nil
}

var (
	neededLength = working.Symbol{Name: "L_need", Dim: quantity.Lengths, Key: "neededLength"}
	steppedNeed  = working.Symbol{Name: "L_n", Dim: quantity.Lengths, Key: "neededLengthInSteps"}
)

// The rules of levels and needed length.
var (
	// HeadAtSetRule has the inputs Z_c, l_p, Z_p, h_g, u.
	HeadAtSetRule = working.Rule{Key: "segment.headAtSet", Symbol: "Z_h", Formula: "max(Z_c + l_p, Z_p + h_g - u)",
		Inputs: []working.Symbol{
			{Name: "Z_c", Dim: quantity.Lengths, Key: "cutoffLevel"},
			{Name: "l_p", Dim: quantity.Lengths, Key: "barProjection"},
			{Name: "Z_p", Dim: quantity.Lengths, Key: "platformLevel"},
			{Name: "h_g", Dim: quantity.Lengths, Key: "gripHeight"},
			{Name: "u", Dim: quantity.Lengths, Key: "followerTravel"},
		}, Dim: quantity.Lengths, Decimals: 3, Basis: "segment.headAtSet"}
	// NeedRule has the inputs Z_h, Z_toe.
	NeedRule = working.Rule{Key: "segment.need", Symbol: "L_need", Formula: "Z_h - Z_toe",
		Inputs: []working.Symbol{
			{Name: "Z_h", Dim: quantity.Lengths, Key: "headAtSet"},
			{Name: "Z_toe", Dim: quantity.Lengths, Key: "toeLevel"},
		}, Dim: quantity.Lengths, Decimals: 4, Basis: "segment.need"}
	// NeedStepsRule has the inputs L_need, s ([StepSlack]) and d ([Step]).
	NeedStepsRule = working.Rule{Key: "segment.needSteps", Symbol: "L_n", Formula: "roundup(L_need - s, d)",
		Inputs: []working.Symbol{
			neededLength,
			{Name: "s", Dim: quantity.Lengths, Key: "stepSlack"},
			{Name: "d", Dim: quantity.Lengths, Key: "lengthStep"},
		}, Dim: quantity.Lengths, Decimals: 4, Basis: "segment.step"}
)
