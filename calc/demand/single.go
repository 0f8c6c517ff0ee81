package demand

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// SetLoad returns the set load of the single-factor scheme,
//
//	F_set = FS P
//
// FS: factor on the working load, >= 1 [-]; P: working load [kN]. Source:
// conventional single-factor design (basis "demand.single"). The factor is the
// designer's; none is assumed.
func SetLoad(factor quantity.Ratio, workingLoad quantity.Force) quantity.Force {
	return quantity.Force(float64(factor) * float64(workingLoad))
}

// SetLoadRule is the formula of [SetLoad]; its inputs are FS and P.
var SetLoadRule = working.Rule{
	Key: "demand.single", Symbol: "F_set", Formula: "FS*P", Dim: quantity.Forces, Decimals: 1, Basis: "demand.single",
	Inputs: []working.Symbol{
		{Name: "FS", Dim: quantity.Dimensionless, Key: "factor"},
		{Name: "P", Dim: quantity.Forces, Key: "workingLoad"},
	},
}

// Single is one factor on the working load, R = FS P; see [SetLoad].
type Single struct {
	Factor      ratio // FS, at least 1
	WorkingLoad force // P, above zero
}

func (s Single) demand(p *pass) (force, error) {
	if err := first(ofRatio("FS", s.Factor, "2.0").from(1), ofLoad("P", s.WorkingLoad).positive()); err != nil {
		return force{}, err
	}
	return p.last(SetLoadRule, SetLoad(s.Factor.V, s.WorkingLoad.V), s.Factor.In(), s.WorkingLoad.In()), nil
}
