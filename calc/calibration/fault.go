package calibration

import "gaugewright/calc/quantity"

// Fault says why points give no curve, or a value no answer. Screens word the
// code with [Fault.Args].
//
// The codes:
//
//	calibration.tooFew           fewer than 2 points
//	calibration.quadraticTooFew  a quadratic through fewer than 6 points
//	calibration.places           fewer places x than the curve has coefficients
//	calibration.notFinite        a point that is no number
//	calibration.setEqual         all set values are equal
//	calibration.observedEqual    all observed values are equal
//	calibration.decreasing       the observed falls while the set rises
//	calibration.turns            a quadratic that turns over inside its range
//	calibration.outside          outside the range of the points
//	calibration.noFiniteInterval the slope is so doubtful that no limits exist
//	calibration.doubtNotKnown    two points leave the doubt unknown
type Fault struct {
	Code      string
	Value     float64 // what was given or found, in the coherent unit
	Low, High float64 // what would do, where that is a range
	Dim       quantity.Dimension
	Decimals  int // of the coherent unit, for Args
}

// Error says it for logs and tests.
func (e *Fault) Error() string {
	args := e.Args(quantity.Point)
	return e.Code + ": " + args[0] + "; from " + args[1] + " to " + args[2]
}

// Args are the arguments of the sentence of the code: what was found, and the
// range that is allowed, with their unit.
func (e *Fault) Args(sign quantity.DecimalSign) []string {
	var list []string
	for _, v := range []float64{e.Value, e.Low, e.High} {
		unit, n := e.Dim.Coherent(), v
		if units := quantity.Units(e.Dim); len(units) > 0 {
			unit, n = units[0].Symbol, units[0].From(v)
		}
		text := quantity.Print(n, e.Decimals, sign)
		if unit != "" {
			text += " " + unit
		}
		list = append(list, text)
	}
	return list
}
