package history

import (
	"slices"
	"strconv"

	"gaugewright/calc/document"
)

// Union puts two copies of one job together: every sitting and every entry of
// both, every record line of both, "now" folded anew. It changes neither copy.
// It is commutative, associative and idempotent: the copies may arrive in any
// order, any number of times.
//
// Where the copies contradict one another about what happened (two entries
// under one number, two versions of a record line), the copy whose canonical
// form is smaller stays in its place and the other is kept whole under
// "disputed", so that nothing is lost; both are named as damage.
func Union(a, b *document.Node) (*document.Node, []Damage) {
	u := &union{}
	out := document.NewMap()
	for _, name := range bothNames(a, b) {
		x, y := a.Get(name), b.Get(name)
		switch name {
		case "now", "sittings", "records", "disputed":
		default:
			out.Set(name, u.outside("/"+document.Escape(name), x, y))
		}
	}
	sittings := u.sittings(a.Get("sittings"), b.Get("sittings"))
	records := u.records("/records", a.Get("records"), b.Get("records"))
	disputed := u.kept(a.Get("disputed"), b.Get("disputed"))

	result := document.NewMap()
	for _, name := range []string{"format", "schema", "minReader", "writer", "job"} {
		if v := out.Get(name); v != nil {
			result.Set(name, v)
		}
	}
	trial := document.NewMap()
	trial.Set("sittings", sittings)
	result.Set("now", Read(trial).Fold())
	if records.Len() > 0 {
		result.Set("records", records)
	}
	result.Set("sittings", sittings)
	for name, v := range out.Members() {
		if result.Get(name) == nil {
			result.Set(name, v)
		}
	}
	if disputed.Len() > 0 {
		result.Set("disputed", disputed)
	}
	return result, append(u.damage, Read(result).Damage()...)
}

type union struct {
	damage   []Damage
	disputes []dispute
}

type dispute struct {
	path  string
	value *document.Node
}

// bothNames lists the names of two maps, sorted, each once.
func bothNames(a, b *document.Node) []string {
	var names []string
	for name := range a.Members() {
		names = append(names, name)
	}
	for name := range b.Members() {
		if a.Get(name) == nil {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// sittings unites the sittings of two copies.
func (u *union) sittings(a, b *document.Node) *document.Node {
	out := document.NewMap()
	for _, id := range bothNames(a, b) {
		x, y := a.Get(id), b.Get(id)
		if x == nil || y == nil {
			x, y = whichever(x, y), whichever(x, y)
		}
		at := "/sittings/" + document.Escape(id)
		s := document.NewMap()
		for _, name := range bothNames(x, y) {
			if name != "entries" {
				s.Set(name, u.outside(at+"/"+document.Escape(name), x.Get(name), y.Get(name)))
			}
		}
		s.Set("entries", u.entries(at, id, x.Get("entries"), y.Get("entries")))
		out.Set(id, ordered(s, "who", "device", "on", "from", "seen", "entries"))
	}
	return out
}

// entries unites the entries of one sitting by their numbers.
func (u *union) entries(at, id string, a, b *document.Node) *document.Node {
	byNumber := map[int]*document.Node{}
	var numbers []int
	for _, list := range []*document.Node{a, b} {
		for _, e := range list.Items() {
			n, ok := e.Get("s").Int()
			if !ok {
				n = -1
			}
			before := byNumber[n]
			if before == nil {
				byNumber[n] = e
				numbers = append(numbers, n)
				continue
			}
			byNumber[n] = u.smaller(at+"/entries/"+strconv.Itoa(n), TwoEntries, []string{id, strconv.Itoa(n)}, before, e)
		}
	}
	slices.Sort(numbers)
	out := document.NewList()
	for _, n := range numbers {
		out.Append(byNumber[n].Clone())
	}
	return out
}

// smaller keeps one of two values that should be the same, the one whose
// canonical form is smaller, and disputes the other.
func (u *union) smaller(path, code string, args []string, a, b *document.Node) *document.Node {
	if a.Equal(b) {
		if b.Compact() < a.Compact() { // the same in another order of names
			return b
		}
		return a
	}
	if string(b.Canonical()) < string(a.Canonical()) {
		a, b = b, a
	}
	u.damage = append(u.damage, Damage{Code: code, Args: args, Kept: []*document.Node{a, b}})
	u.disputes = append(u.disputes, dispute{path, b})
	return a
}

// records unites what happened: maps member by member, lists as the longer one
// where one begins with the other.
func (u *union) records(at string, a, b *document.Node) *document.Node {
	if a == nil && b == nil {
		return document.NewMap()
	}
	return u.grown(at, a, b)
}

// grown unites two copies of something that only grows.
func (u *union) grown(at string, a, b *document.Node) *document.Node {
	switch {
	case a == nil || b == nil:
		return inOrder(whichever(a, b))
	case a.Kind() == document.Map && b.Kind() == document.Map:
		out := document.NewMap()
		for _, name := range bothNames(a, b) {
			out.Set(name, u.grown(document.Join(at, name), a.Get(name), b.Get(name)))
		}
		return out
	case a.Kind() == document.List && b.Kind() == document.List:
		out := document.NewList()
		for i := range max(a.Len(), b.Len()) {
			x, y := a.Item(i), b.Item(i)
			if x == nil || y == nil {
				out.Append(inOrder(whichever(x, y)))
				continue
			}
			place := at + "/" + strconv.Itoa(i)
			out.Append(inOrder(u.smaller(place, TwoRecords, []string{place}, x, y)))
		}
		return out
	}
	return inOrder(u.smaller(at, TwoRecords, []string{at}, a, b))
}

// outside unites what is neither stated nor recorded: maps member by member;
// of two different values the smaller stays, the other is disputed. Numbers of
// a version take the larger one.
func (u *union) outside(at string, a, b *document.Node) *document.Node {
	switch {
	case a == nil || b == nil:
		return inOrder(whichever(a, b))
	case a.Kind() == document.Map && b.Kind() == document.Map:
		out := document.NewMap()
		for _, name := range bothNames(a, b) {
			out.Set(name, u.outside(document.Join(at, name), a.Get(name), b.Get(name)))
		}
		return out
	}
	if x, ok := a.Int(); ok && (at == "/schema" || at == "/minReader") {
		if y, ok := b.Int(); ok {
			return document.NewInt(max(x, y))
		}
	}
	return inOrder(u.smaller(at, TwoValues, []string{at}, a, b))
}

// kept unites the disputed values of both copies with those found now: a map
// from place to the list of values, each once, by their canonical form.
func (u *union) kept(a, b *document.Node) *document.Node {
	values := map[string][]*document.Node{}
	add := func(path string, v *document.Node) {
		for _, known := range values[path] {
			if known.Equal(v) {
				return
			}
		}
		values[path] = append(values[path], v)
	}
	for _, copy := range []*document.Node{a, b} {
		for path, list := range copy.Members() {
			for _, v := range list.Items() {
				add(path, v)
			}
		}
	}
	for _, d := range u.disputes {
		add(d.path, d.value)
	}
	paths := make([]string, 0, len(values))
	for p := range values {
		paths = append(paths, p)
	}
	slices.Sort(paths)
	out := document.NewMap()
	for _, p := range paths {
		slices.SortFunc(values[p], func(x, y *document.Node) int {
			if string(x.Canonical()) < string(y.Canonical()) {
				return -1
			}
			return 1
		})
		list := document.NewList()
		for _, v := range values[p] {
			list.Append(inOrder(v))
		}
		out.Set(p, list)
	}
	return out
}

func whichever(a, b *document.Node) *document.Node {
	if a != nil {
		return a
	}
	return b
}

// inOrder returns a copy with the names of every map sorted, so that a union
// is the same text whichever copy a value came from.
func inOrder(n *document.Node) *document.Node {
	switch n.Kind() {
	case document.Map:
		out := document.NewMap()
		for _, name := range bothNames(n, nil) {
			out.Set(name, inOrder(n.Get(name)))
		}
		return out
	case document.List:
		out := document.NewList()
		for _, item := range n.Items() {
			out.Append(inOrder(item))
		}
		return out
	}
	return n.Clone()
}

// ordered returns a map with these names first, in this order.
func ordered(m *document.Node, names ...string) *document.Node {
	out := document.NewMap()
	for _, name := range names {
		if v := m.Get(name); v != nil {
			out.Set(name, v)
		}
	}
	for name, v := range m.Members() {
		if out.Get(name) == nil {
			out.Set(name, v)
		}
	}
	return out
}
