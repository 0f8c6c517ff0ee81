package assess

import (
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
)

// Number is a value as it is shown: in a unit, with so many decimals, and with
// the place of its working. A nil *Number is a value that is not known.
type Number struct {
	V        float64 // in the coherent unit of the unit's dimension
	Unit     quantity.Unit
	Decimals int
	Rounded  string // "", "up" or "down": to a gauge division
	Ref      string // id of the working step, or the JSON pointer of a stated value
}

// Says writes the number without its unit.
func (n *Number) Says(sign quantity.DecimalSign) string {
	return quantity.PrintIn(n.V, n.Unit, n.Decimals, sign)
}

// Text writes the number with its unit.
func (n *Number) Text(sign quantity.DecimalSign) string {
	if n.Unit.Symbol == "" {
		return n.Says(sign)
	}
	return n.Says(sign) + " " + n.Unit.Symbol
}

// State says what the readings of a pile amount to.
type State string

// The states of the window of a pile.
const (
	Incomplete   State = "incomplete"    // something for the set reading is not entered
	LimitMissing State = "limit missing" // a required limit is neither entered nor waived
	Closed       State = "closed"        // the set reading exceeds the never-exceed reading
	Open         State = "open"          // press to the set reading, never past the other
	Refused      State = "refused"       // what was entered cannot give a reading; see the notes
)

// Note is something to be said: a code of calc/words and its arguments.
// An argument is plain text; numbers come with their units in it.
type Note struct {
	Code string
	Args []string
}

// Answer is the assessment of one pile.
type Answer struct {
	ID, Mark string
	State    State
	// Needs lists what is not entered yet: keys of fields ("field.piles.workingLoad").
	Needs []string

	Area      *Number  // on which the oil of the circuit acts
	SetLoad   *Number  // F_set
	Factors   []Factor // that the set load was worked out with; only with places
	Set       *Number  // set reading, rounded up to a division
	LoadAtSet *Number  // load on the head at the set reading, low efficiency
	Most      *Number  // the same with the high efficiency
	Never     *Number  // never-exceed reading, rounded down to a division
	Ballast   *Number  // to be added where the reaction alone closes the window
	Limits    []Limit
	Governs   int // index into Limits, -1 when no limit governs
	// Guarded says that the readings keep the uncertainty away from set load and
	// limits; PlainSet and PlainNever are those without it, where only one of the
	// two windows is open.
	Guarded              bool
	PlainSet, PlainNever *Number
	// Uncertainty is that of the load at the set reading, 95 %. Where it is not
	// known, UncertaintyNeeds or UncertaintyFault say why. EfficiencyShare is what
	// an efficiency that is not calibrated makes of it.
	Uncertainty, EfficiencyShare *Number
	UncertaintyNeeds             []string
	UncertaintyFault             *Note
	// Certificate is what the circuit is read by; nil: by its efficiency.
	Certificate *CertificateUsed
	// Low and High are the efficiencies used; Single says that they are one.
	Low, High *Number
	Single    bool
	// Reasons say why the state is what it is, Ways what would open a closed
	// window, Notes what else is to be known.
	Reasons, Ways, Notes []Note

	// Ground are the pressures under the feet; GroundNeeds what they lack.
	Ground      []Ground
	GroundNeeds []string

	Segments Segments
	Head     Head
}

// Limit is a limit with its own reading: one of the four required ones, or one
// that counts where it is entered.
type Limit struct {
	Kind    window.Kind
	State   window.State
	Value   *Number // the limit itself: a load, or a pressure
	Reading *Number
	Use     *Number // part of the limit used at the set reading
	Waiver  job.Waiver
	Basis   string   // where the limit comes from, as the person stated it
	Needs   []string // what is not entered, while the limit is missing or unchecked
	Problem *Note    // why what is entered cannot be used
	Parts   []Part   // of which the least is the limit, where there are several
	Notes   []Note
	// Pitching is what the free length stands while the toe is not held by the
	// ground yet, PitchingReading its reading: kept until it is, no limit of the
	// set. Both are nil for every other limit.
	Pitching, PitchingReading *Number
}

// Segments is the make-up of a pile from the stock.
type Segments struct {
	Needs  []string
	Need   *Number // least length of the pile
	Total  *Number
	OffCut *Number
	Cost   *Number // off-cut and joints at the stated price, in metres of pile
	// Heaviest is the mass of the longest segment used, for lifting; nil while
	// the section is not entered.
	Heaviest *Number
	Pieces   []Piece
	Joints   int
	// Fewest and Least are the make-ups with the fewest joints and with the
	// least off-cut, where they differ from the best one.
	Fewest, Least *Alternative
	// Laid are the joints from the toe up, only with a working; Shifts what other
	// toe levels would take, only of [Job.Whole].
	Laid   []Joint
	Shifts []Shift
	// StickUp is how high the head stands above platform at the end. Decide is
	// the level of the toe by which one more segment or the follower must be
	// chosen, ToeLeft what is left to press then; nil where the head stays up.
	StickUp, Decide, ToeLeft *Number
	Notes                    []Note
}

// Joint is the plane between two pieces: its level with the toe at its end, and
// where the toe stands while it is made, nil where that is not known.
type Joint struct{ Level, Stop *Number }

// Shift is the make-up for a toe that ends deeper by so much, or higher where
// that is negative, or why there is none.
type Shift struct {
	By *Number
	Alternative
	Problem *Note
}

// Piece is a number of equal segments.
type Piece struct {
	Count  int
	Length *Number
	Name   string
}

// Alternative is another make-up, to be set beside the best.
type Alternative struct {
	Pieces        []Piece
	Joints        int
	Total, OffCut *Number
}

// Head is what is to be done at the pile head.
type Head struct {
	Needs    []string
	Surveyed bool    // the level was measured; otherwise it is expected
	Level    *Number // of the head
	State    string  // key of calc/words: what is to be done
	Saw      *Number // level of the saw cut
	Cut      *Number // length to cut, measured down from the head
	Above    *Number // height of the saw cut above platform
	Short    *Number // by how much the bars are short
	BuildUp  *Number // height to build up
	Pressed  *Number // length pressed below platform
	Below    *Number // length from the toe to cut-off
	Notes    []Note
}

// Numbers lists every number of an answer that is known: each has a working.
func (a *Answer) Numbers() []*Number {
	s, h := &a.Segments, &a.Head
	list := []*Number{a.Area, a.SetLoad, a.Set, a.LoadAtSet, a.Most, a.Never, a.Ballast, a.Uncertainty, a.EfficiencyShare, a.PlainSet, a.PlainNever, a.Low, a.High,
		s.Need, s.Total, s.OffCut, s.Cost, s.Heaviest, s.StickUp, s.Decide, s.ToeLeft, h.Level, h.Saw, h.Cut, h.Above, h.Short, h.BuildUp, h.Pressed, h.Below}
	for _, l := range a.Limits {
		list = append(list, l.Value, l.Reading, l.Use, l.Pitching, l.PitchingReading)
		for _, p := range l.Parts {
			list = append(list, p.Value)
		}
	}
	for _, g := range a.Ground {
		list = append(list, g.Pressure, g.Allowed, g.Use)
	}
	pieces := s.Pieces
	for _, alternative := range []*Alternative{s.Fewest, s.Least} {
		if alternative != nil {
			list = append(list, alternative.Total, alternative.OffCut)
			pieces = append(pieces[:len(pieces):len(pieces)], alternative.Pieces...)
		}
	}
	for _, j := range s.Laid {
		list = append(list, j.Level, j.Stop)
	}
	for _, shift := range s.Shifts {
		list = append(list, shift.Total, shift.OffCut)
	}
	for _, p := range pieces {
		list = append(list, p.Length)
	}
	known := list[:0]
	for _, n := range list {
		if n != nil {
			known = append(known, n)
		}
	}
	return known
}
