package demand

import (
	"gaugewright/calc/pile"
	"gaugewright/calc/quantity"
)

// InputError says what cannot be used, what is allowed, and an example.
//
// The codes:
//
//	demand.notFinite        not a number, or without bound
//	demand.notPositive      zero, negative or not entered where more than zero is needed
//	demand.below            less than Limit
//	demand.above            more than Limit
//	demand.holdIsNoTest     a set hold was named as a test
//	demand.testUnknown      Text: neither none nor one of the tests of the scheme
//	demand.credit.by        credit for tests without a person
//	demand.credit.why       credit for tests without a reason
//	demand.ratings          no risk rating, or one without a weight
//	demand.redundancy       Text: neither low nor high
//	demand.tests.none       no static test
//	demand.tests.some       set loads of some of the test piles and not of others
//	demand.combinations     no combination of actions
//	demand.dragFactor       a drag load without a factor chosen for it
//	demand.setUp.test       a set-up above 1 without its test; Text: which test pile, if of several
//	demand.setUp.by         a set-up above 1 without who tested
//	demand.setUp.on         a set-up above 1 without the day of the test
//	demand.setUp.which      set-up beside T or N: on a whole pile, with long-term T and N, or not?
//	demand.setUp.twice      a set-up ratio beside test piles with their own set loads
//	demand.typedAndLayers   a resistance that is both typed and made of layers
type InputError = pile.InputError

func refuse(code, text string) error { return &InputError{Code: code, Text: text} }

// input is a number on its way through its checks.
type input struct {
	symbol  string
	v       float64
	dim     quantity.Dimension
	example string
}

func ofLoad(symbol string, v force) input {
	return input{symbol, float64(v.V), quantity.Forces, "900 kN"}
}

func ofRatio(symbol string, v ratio, example string) input {
	return input{symbol, float64(v.V), quantity.Dimensionless, example}
}

func (n input) fault(code string, limit float64) error {
	return &InputError{Code: code, Symbol: n.symbol, Value: n.v, Limit: limit, Dim: n.dim, Example: n.example}
}

// from refuses what is not a finite number from low up.
func (n input) from(low float64) error {
	switch {
	case n.v-n.v != 0:
		return n.fault("demand.notFinite", 0)
	case n.v < low:
		return n.fault("demand.below", low)
	}
	return nil
}

// positive refuses what is not a finite number above zero.
func (n input) positive() error {
	if n.v-n.v == 0 && n.v <= 0 {
		return n.fault("demand.notPositive", 0)
	}
	return n.from(0)
}

// upTo refuses what is not above zero and at most high.
func (n input) upTo(high float64) error {
	if n.v > high {
		return n.fault("demand.above", high)
	}
	return n.positive()
}

// first returns the first error of a list of checks.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
