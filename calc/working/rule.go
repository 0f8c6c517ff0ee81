package working

import "gaugewright/calc/quantity"

// Rule is a formula of the trade as data, standing beside the Go function that
// computes it.
type Rule struct {
	// Key names the rule; calc/words holds its title under "rule." + Key.
	Key string
	// Symbol is what the formula gives, "F". A statement has none.
	Symbol string
	// Formula is the right-hand side in the language of this package.
	Formula string
	// Inputs are the symbols of the formula in the order in which values are
	// handed over.
	Inputs []Symbol
	// Dim is the dimension of the result.
	Dim quantity.Dimension
	// Decimals is how many decimals of the coherent unit the result is printed
	// with in a working.
	Decimals int
	// Basis is the id of the entry in calc/basis that says where the formula
	// comes from.
	Basis string
	// Statement marks a proof by substitution: the formula must be true.
	Statement bool
}

// Symbol is one input of a formula.
type Symbol struct {
	Name string // as in the formula: "eta_lo"
	Dim  quantity.Dimension
	Key  string // calc/words holds its name under "symbol." + Key
}

// In is a value on its way into a step: the number in its coherent unit, and
// where it stands: the id of a step, a path in the job file, or "basis:" and
// the id of a figure. Without a book Ref is empty.
type In struct {
	V   float64
	Ref string
}

// Of is a computed quantity with the place of its working.
type Of[T ~float64] struct {
	V   T
	Ref string
}

// In hands the quantity to a step.
func (q Of[T]) In() In { return In{float64(q.V), q.Ref} }

// Step is one line of a working.
type Step struct {
	ID     string
	Rule   Rule
	Value  float64
	Inputs []In
	// Proofs are the ids of statements that belong to this step.
	Proofs []string
}

// Book keeps the steps of one assessment. The nil Book keeps nothing; one made
// by [NewPlaces] gives the places of steps without keeping them.
type Book struct {
	prefix string
	steps  map[string]*Step
	order  *[]string
}

// NewBook returns an empty book whose step ids begin with prefix.
func NewBook(prefix string) *Book {
	return &Book{prefix: prefix, steps: map[string]*Step{}, order: &[]string{}}
}

// NewPlaces returns a book that hands out the places of steps and keeps none:
// for lists, of which only a number that is opened needs its working. What is
// assessed with it is, place for place, what is assessed with [NewBook].
func NewPlaces(prefix string) *Book { return &Book{prefix: prefix} }

// Under returns the same book with a longer prefix, "p14/" say.
func (b *Book) Under(prefix string) *Book {
	if b == nil {
		return nil
	}
	return &Book{prefix: b.prefix + prefix, steps: b.steps, order: b.order}
}

// On says whether steps have places.
func (b *Book) On() bool { return b != nil }

// Keeps says whether steps are kept as well.
func (b *Book) Keeps() bool { return b != nil && b.steps != nil }

// Place is the id of the step of this name, "" without a book.
func (b *Book) Place(name string) string {
	if b == nil {
		return ""
	}
	return b.prefix + name
}

// Find returns the step with this id, nil when there is none.
func (b *Book) Find(id string) *Step {
	if !b.Keeps() {
		return nil
	}
	return b.steps[id]
}

// Steps returns all steps in the order in which they were made.
func (b *Book) Steps() []*Step {
	if !b.Keeps() {
		return nil
	}
	list := make([]*Step, len(*b.order))
	for i, id := range *b.order {
		list[i] = b.steps[id]
	}
	return list
}

// Put records that the rule gave value from the inputs, and returns the value
// with its place. The number of inputs must be that of the rule: another
// number is a programming error and panics.
func Put[T ~float64](b *Book, rule Rule, name string, value T, inputs ...In) Of[T] {
	if b == nil {
		return Of[T]{V: value}
	}
	return Of[T]{V: value, Ref: b.put(rule, name, float64(value), inputs)}
}

// Prove records a statement that belongs to the step with the id of.
func Prove(b *Book, rule Rule, name, of string, inputs ...In) {
	if !b.Keeps() {
		return
	}
	rule.Statement = true
	id := b.put(rule, name, 1, inputs)
	if s := b.steps[of]; s != nil {
		s.Proofs = append(s.Proofs, id)
	}
}

func (b *Book) put(rule Rule, name string, value float64, inputs []In) string {
	if len(inputs) != len(rule.Inputs) {
		panic("working: " + rule.Key + ": wrong number of inputs")
	}
	id := b.prefix + name
	if b.steps == nil {
		return id
	}
	if _, known := b.steps[id]; !known {
		*b.order = append(*b.order, id)
	}
	b.steps[id] = &Step{ID: id, Rule: rule, Value: value, Inputs: append([]In(nil), inputs...)}
	return id
}
