package job

import (
	"strconv"

	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// State says how a field stands.
type State byte

// Blank, given, not known and not applicable are four different things. Bad is
// a value that the check refuses; it is never computed with.
const (
	Blank State = iota
	IsGiven
	IsNotKnown
	IsNotApplicable
	Bad
)

// Given is a quantity as it stands in the job.
type Given[T ~float64] struct {
	V     T
	State State
	// Stated holds the typed digits and unit where State is IsGiven.
	Stated quantity.Stated
	owner  string // JSON pointer of the thing
	name   string
	figure string // id in calc/basis where the value is a preset's
}

// Known says that there is a value to compute with.
func (g Given[T]) Known() bool { return g.State == IsGiven }

// Path returns the JSON pointer of the field.
func (g Given[T]) Path() string { return g.owner + "/" + g.name }

// In hands the value to a step of the working. Without a book no path is
// made.
func (g Given[T]) In(b *working.Book) working.In {
	if !b.On() {
		return working.In{V: float64(g.V)}
	}
	if g.figure != "" {
		return working.In{V: float64(g.V), Ref: "basis:" + g.figure}
	}
	return working.In{V: float64(g.V), Ref: g.Path()}
}

// or takes a figure of calc/basis where nothing is stated; an empty id is none.
func (g Given[T]) or(figure string) Given[T] {
	if g.State != Blank || figure == "" {
		return g
	}
	g.State, g.V, g.figure = IsGiven, T(basis.Figure(figure)), figure
	return g
}

// Of hands the value on as a computed quantity whose place is the field.
func (g Given[T]) Of(b *working.Book) working.Of[T] {
	return working.Of[T]{V: g.V, Ref: g.In(b).Ref}
}

// given reads a quantity below a thing. name may have several steps.
func given[T ~float64](n *document.Node, owner, name string, d quantity.Dimension) Given[T] {
	g := Given[T]{owner: owner, name: name}
	switch text := n.Text(); {
	case text == "": // absent, or made blank by a person
	case text == NotKnown:
		g.State = IsNotKnown
	case text == NotApplicable:
		g.State = IsNotApplicable
	default:
		s, err := quantity.ParseStated(text, d)
		if err != nil {
			g.State = Bad
			return g
		}
		g.State, g.Stated, g.V = IsGiven, s, T(s.Value)
	}
	return g
}

func itoa(i int) string { return strconv.Itoa(i) }

// count reads a whole number that the file holds as text.
func count(n *document.Node) (int, bool) {
	v, err := strconv.Atoi(n.Text())
	return v, err == nil
}
