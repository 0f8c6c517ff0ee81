package history

import (
	"slices"
	"sort"
	"strconv"

	"gaugewright/calc/document"
)

// Log is the history of one file, read once: its sittings in an order that
// agrees with what each had seen, ties by id, and the damage found on the way.
// It refers to the tree and is stale after the tree changes.
type Log struct {
	root     *document.Node
	sittings []record
	index    map[string]int // place of a sitting in the order
	places   []int          // the same by rank
	ordered  int            // how many sittings stand in order; those behind are on a cycle or saw one that is
	damage   []Damage
}

// record is one sitting as read.
type record struct {
	id      string
	rank    int // its place among the sittings by id
	node    *document.Node
	entries []*document.Node
	seen    []sight  // by rank
	beyond  []Damage // by the other's id
}

// Damage is something in the history that should not be. Nothing is dropped
// for it.
type Damage struct {
	// Code is one of the codes below; calc/words has the sentence.
	Code string
	// Args are the sittings or places, and numbers.
	Args []string
	// Kept holds what stood there twice, where something did.
	Kept []*document.Node
}

// The codes of damage.
const (
	MissingEntry = "history.missing" // sitting, number: an entry is not there
	TwoEntries   = "history.two"     // sitting, number: two entries under one number; both are kept
	BeyondEnd    = "history.beyond"  // sitting, other, seen, there: it saw more of the other than there is
	Cycle        = "history.cycle"   // sittings: each saw the other
	TwoRecords   = "history.record"  // place: two copies of a record disagree; both are kept
	TwoValues    = "history.value"   // place: two copies disagree outside the history
)

// Read reads the history of a file.
func Read(root *document.Node) *Log {
	sittings := root.Get("sittings")
	l := &Log{root: root, sittings: make([]record, 0, sittings.Len()), index: make(map[string]int, sittings.Len())}
	for id, node := range sittings.Members() {
		entries := node.Get("entries")
		r := record{id: id, node: node, entries: make([]*document.Node, 0, entries.Len())}
		next := 0
		for _, e := range entries.Items() {
			s, ok := e.Get("s").Int()
			if !ok || s < next {
				l.damage = append(l.damage, Damage{Code: TwoEntries, Args: []string{id, strconv.Itoa(s)}, Kept: []*document.Node{e}})
				continue
			}
			for ; next < s && next < s+mostMissing; next++ {
				l.damage = append(l.damage, Damage{Code: MissingEntry, Args: []string{id, strconv.Itoa(next)}})
				if len(l.damage) > mostMissing {
					next = s
					break
				}
				r.entries = append(r.entries, nil)
			}
			next = s + 1
			r.entries = append(r.entries, e)
		}
		l.sittings = append(l.sittings, r)
	}
	sort.Slice(l.sittings, func(i, j int) bool { return l.sittings[i].id < l.sittings[j].id })
	for i := range l.sittings {
		l.look(i)
	}
	l.sort()
	for _, r := range l.sittings {
		l.damage = append(l.damage, r.beyond...)
	}
	return l
}

// mostMissing bounds how many missing entries are named one by one.
const mostMissing = 1000

// sort puts the sittings, which stand by id, into an order in which every one
// stands after those it saw something of; among those that could come next, the
// smallest id does. Sittings on a cycle come last, by id, and are named as
// damage.
func (l *Log) sort() {
	waits := make([]int, len(l.sittings))    // sittings seen and not yet placed
	starts := make([]int, len(l.sittings)+1) // in after, of those that saw a sitting
	each := func(visit func(i, seen int)) {
		for i := range l.sittings {
			for _, s := range l.sittings[i].seen {
				visit(i, s.rank)
			}
		}
	}
	each(func(i, seen int) {
		waits[i]++
		starts[seen+1]++
	})
	for i := range l.sittings {
		starts[i+1] += starts[i]
	}
	after, filled := make([]int, starts[len(l.sittings)]), slices.Clone(starts)
	each(func(i, seen int) {
		after[filled[seen]] = i
		filled[seen]++
	})
	var ready heap
	for i, n := range waits {
		if n == 0 {
			ready.push(i)
		}
	}
	order := make([]record, 0, len(l.sittings))
	placed := make([]bool, len(l.sittings))
	for len(ready) > 0 {
		i := ready.pop()
		placed[i] = true
		order = append(order, l.sittings[i])
		for _, k := range after[starts[i]:starts[i+1]] {
			if waits[k]--; waits[k] == 0 {
				ready.push(k)
			}
		}
	}
	var cycle []string
	for i, r := range l.sittings {
		if !placed[i] {
			cycle = append(cycle, r.id)
			order = append(order, r)
		}
	}
	l.ordered = len(order) - len(cycle)
	if cycle != nil {
		l.damage = append(l.damage, Damage{Code: Cycle, Args: cycle})
	}
	l.sittings, l.places = order, make([]int, len(order))
	for i, r := range order {
		l.index[r.id], l.places[r.rank] = i, i
	}
}

// heap gives the smallest number first.
type heap []int

func (h *heap) push(v int) {
	*h = append(*h, v)
	for i := len(*h) - 1; i > 0 && (*h)[i] < (*h)[(i-1)/2]; i = (i - 1) / 2 {
		(*h)[i], (*h)[(i-1)/2] = (*h)[(i-1)/2], (*h)[i]
	}
}

func (h *heap) pop() int {
	top := (*h)[0]
	last := len(*h) - 1
	(*h)[0] = (*h)[last]
	*h = (*h)[:last]
	for i := 0; ; {
		least := i
		for _, k := range [2]int{2*i + 1, 2*i + 2} {
			if k < last && (*h)[k] < (*h)[least] {
				least = k
			}
		}
		if least == i {
			return top
		}
		(*h)[i], (*h)[least] = (*h)[least], (*h)[i]
		i = least
	}
}

// Damage returns what is wrong with the history.
func (l *Log) Damage() []Damage { return l.damage }

// Ref names one entry.
type Ref struct {
	Sitting string
	S       int
}

// position is a place in the log: index of the sitting, number of the entry.
type position struct{ sitting, s int }

// each walks the entries in the order of the log, beginning with a sitting.
func (l *Log) each(from int, visit func(at position, entry *document.Node)) {
	for i := from; i < len(l.sittings); i++ {
		for s, e := range l.sittings[i].entries {
			if e != nil {
				visit(position{i, s}, e)
			}
		}
	}
}

// leaves walks the fields that a patch states: every value that is not a map.
func leaves(path string, patch *document.Node, visit func(path string, value *document.Node)) {
	for name, value := range patch.Members() {
		below := document.Join(path, name)
		if value.Kind() == document.Map {
			leaves(below, value, visit)
			continue
		}
		visit(below, value)
	}
}
