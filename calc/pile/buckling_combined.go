package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Combined returns what a free length of concrete or timber pile stands, the
// section limit and the load of Euler in one,
//
//	1/N = 1/N_0 + 1/N_cr
//
// section: N_0, the section limit [kN], above zero. With no free length it is
// the section limit. The error is an [*InputError]. Source: Rankine's formula
// for struts, used here by our own choice, with the stiffness as stated:
// cracks, creep and the moisture of timber must be in it.
//
// Off the axis. With F_lim of [OffAxisLimit] in place of N_0 the result covers
// the moment of the grip grown by the bending of the strut. Let n = N/N_cr and
// r = (e/W_el)/(1/A + e/W_el), the part of the edge stress that bending makes.
// Then N/F_lim = 1 - n, and with the moment grown by 1/(1 - n) the edge stress
// over its limit is (1 - n)(1 - r + r/(1 - n)) = 1 - n (1 - r) <= 1. With the
// exact growth between two ends that both carry the moment, 1/cos(pi/2
// sqrt(n)), it stays at most 1 while r is at most 0.78.
func (s Strut) Combined(section quantity.Force) (Buckling, error) {
	if err := force("N_0", section).positive(); err != nil {
		return Buckling{}, err
	}
	if s.Length == 0 {
		return Buckling{Limit: section}, nil
	}
	euler, err := s.Euler()
	if err != nil {
		return Buckling{}, err
	}
	return Buckling{Euler: euler, Limit: 1 / (1/section + 1/euler)}, nil
}

// CombinedRule has the inputs N_0, N_cr.
var CombinedRule = working.Rule{Key: "pile.combined", Symbol: "N", Formula: "1/(1/N_0 + 1/N_cr)",
	Inputs: []working.Symbol{sectionLimit, eulerLoad}, Dim: quantity.Forces, Decimals: 1, Basis: "pile.combined"}
