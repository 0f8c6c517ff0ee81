package drive

import "gaugewright/calc/quantity"

// Answer is yes, no, or not known.
type Answer byte

// The answers. What is not known is neither of the others.
const (
	NotKnown Answer = iota
	No
	Yes
)

// Pressure is a pressure [kPa], which may not be known.
type Pressure struct {
	V     quantity.Pressure
	Known bool
}

// Reading is one reading of the gauge while a pile was pressed, with what held
// for the set-up that was in force when it was taken.
type Reading struct {
	Shown Pressure // by the gauge, as written down
	Peak  Pressure // highest seen since the reading before
	Set   Pressure // set reading of the set-up
	Never Pressure // never-exceed reading of the set-up
}

// Outcome is what the readings of a pile say together.
type Outcome struct {
	Reached Answer // the set reading was reached by the ram
	Passed  Answer // the never-exceed reading was passed
}

// slack is the part of a reading that it may be short of the set reading, or
// beyond the never-exceed reading: both are whole divisions worked out in
// floating point, and a reading on the very division is meant. It is far below
// any gauge.
const slack = 1e-9

// Press says what came out of pressing a pile:
//
//	reached: p >= p_set for one reading; passed: p > p_never, p the reading or its peak
//
// with p, p_set and p_never in kPa, each reading held against its own set-up's.
// One reading answers yes. The answer is no where every reading can be held
// against its bound and none answers yes; otherwise, and without a reading, it is
// not known: a reading under a set-up that gives no set reading may have reached
// it. A peak passes, but does not reach: the ram was not seen to stay there.
//
// It says nothing of a hold: reached is a gauge reading seen once, not a set that
// was held for its time, and neither says anything of what the pile can carry.
//
// Source: our own choice of words for a comparison; no formula is borrowed.
func Press(readings []Reading) Outcome {
	var o Outcome
	var reached, passed sum
	for _, r := range readings {
		if r.Shown.Known {
			reached.add(r.Set.Known, r.Shown.V >= r.Set.V*(1-slack))
			passed.add(r.Never.Known, r.Shown.V > r.Never.V*(1+slack))
		}
		if r.Peak.Known {
			passed.add(r.Never.Known, r.Peak.V > r.Never.V*(1+slack))
		}
	}
	o.Reached, o.Passed = reached.answer(), passed.answer()
	return o
}

// sum is "one of them" over answers of which some may not be known.
type sum struct{ some, yes, open bool }

func (s *sum) add(known, yes bool) {
	s.some = true
	s.yes = s.yes || known && yes
	s.open = s.open || !known
}

func (s sum) answer() Answer {
	switch {
	case s.yes:
		return Yes
	case s.some && !s.open:
		return No
	}
	return NotKnown
}
