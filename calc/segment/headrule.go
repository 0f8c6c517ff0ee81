package segment

import "gaugewright/calc/working"

// HeadAtSetRuleFor is [HeadAtSetRule] without the terms that a rig does not
// have: grip false drops platform and grip height (only the cap counts),
// follower false drops the follower. Inputs keep their order.
func HeadAtSetRuleFor(grip, follower bool) working.Rule {
	r := HeadAtSetRule
	switch {
	case !grip:
		r.Formula, r.Inputs = "Z_c + l_p", HeadAtSetRule.Inputs[:2]
	case !follower:
		r.Formula, r.Inputs = "max(Z_c + l_p, Z_p + h_g)", HeadAtSetRule.Inputs[:4]
	}
	return r
}
