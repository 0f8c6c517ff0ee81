package history

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"gaugewright/calc/document"
)

// sight is how many entries of another sitting were seen.
type sight struct{ rank, count int }

// saw returns how many entries of the sitting of a rank this one lists as seen.
func (r *record) saw(rank int) int {
	i, ok := slices.BinarySearchFunc(r.seen, rank, func(s sight, rank int) int { return s.rank - rank })
	if !ok {
		return 0
	}
	return r.seen[i].count
}

// look reads what a sitting has seen of the others, which stand by id.
func (l *Log) look(rank int) {
	r := &l.sittings[rank]
	r.rank = rank
	seen := r.node.Get("seen")
	r.seen = make([]sight, 0, seen.Len())
	next := 0 // as a rule the names stand by id too
	for other, n := range seen.Members() {
		count, ok := n.Int()
		if !ok || count <= 0 {
			continue
		}
		known := next < len(l.sittings) && l.sittings[next].id == other
		if !known {
			next, known = slices.BinarySearchFunc(l.sittings, other, func(r record, id string) int { return strings.Compare(r.id, id) })
		}
		there := 0
		if known {
			there = len(l.sittings[next].entries)
			if next != rank { // a list is of the others
				r.seen = append(r.seen, sight{next, count})
			}
			next++
		}
		if count > there {
			r.beyond = append(r.beyond, Damage{Code: BeyondEnd, Args: []string{r.id, other, strconv.Itoa(count), strconv.Itoa(there)}})
		}
	}
	sort.Slice(r.seen, func(i, j int) bool { return r.seen[i].rank < r.seen[j].rank })
	sort.Slice(r.beyond, func(i, j int) bool { return r.beyond[i].Args[1] < r.beyond[j].Args[1] })
}

// listed returns what a sitting that begins now has seen: how many entries of
// every other. Left out is what a later sitting in the list has seen to its end,
// or the lists of a job that is opened a thousand times would be half a million
// lines.
func listed(root *document.Node) *document.Node {
	l := Read(root)
	implied := make([]bool, len(l.sittings)) // by rank
	for i, r := range l.sittings {
		for _, s := range r.seen {
			if at := l.places[s.rank]; at < i && s.count >= l.sittings[at].node.Get("entries").Len() && r.node.Get("entries").Len() > 0 {
				implied[s.rank] = true
			}
		}
	}
	seen := document.NewMap()
	for id, other := range root.Get("sittings").Members() {
		n := other.Get("entries").Len()
		if n > 0 && !implied[l.sittings[l.index[id]].rank] {
			seen.Set(id, document.NewInt(n))
		}
	}
	return seen
}

// settled returns how many sittings at the beginning of the log can be in no
// open choice: each of them saw all entries of those before it, and every later
// sitting saw all of theirs. An ordinary file is settled to its end, so that
// nothing has to be compared.
func (l *Log) settled() int {
	// Who saw all of the last saw all of those before it too.
	chain, last := 0, -1
	for ; chain < l.ordered; chain++ {
		r := &l.sittings[chain]
		if len(r.entries) == 0 {
			continue
		}
		if last >= 0 && r.saw(l.sittings[last].rank) < len(l.sittings[last].entries) {
			break
		}
		last = chain
	}
	settled := chain
	whole := make([]int, len(l.sittings)) // how much of the chain another sitting saw to its end
	for i := range l.sittings {
		r := &l.sittings[i]
		if i < chain && len(r.entries) > 0 {
			continue // a link of it
		}
		for _, s := range r.seen {
			at := l.places[s.rank]
			switch entries := len(l.sittings[at].entries); {
			case at >= i: // on a cycle
			case at >= chain || entries == 0:
				whole[i] = max(whole[i], whole[at])
			case s.count >= entries:
				whole[i] = max(whole[i], at+1)
			default:
				whole[i] = max(whole[i], at)
			}
		}
		if i >= chain && len(r.entries) > 0 {
			settled = min(settled, whole[i])
		}
	}
	return settled
}

// sights holds how many entries the sittings from a place on have seen of one
// another, by themselves and through those that they have seen something of.
type sights struct {
	from int
	of   [][]int32 // by the place of who saw, then of who was seen; shorter where nothing more was
}

// has says whether entry a has seen entry b.
func (s *sights) has(a, b position) bool {
	if a.sitting == b.sitting {
		return a.s > b.s
	}
	seen := s.of[a.sitting-s.from]
	at := b.sitting - s.from
	return at < len(seen) && int(seen[at]) > b.s
}

func (l *Log) sights(from int) *sights {
	out := &sights{from, make([][]int32, 0, len(l.sittings)-from)}
	for i := from; i < len(l.sittings); i++ {
		var seen []int32
		note := func(at, count int) {
			if at >= len(seen) {
				seen = append(seen, make([]int32, at+1-len(seen))...)
			}
			seen[at] = max(seen[at], int32(min(count, math.MaxInt32)))
		}
		todo, done := []int{i}, map[int]bool{i: true}
		for len(todo) > 0 {
			r := &l.sittings[todo[len(todo)-1]]
			todo = todo[:len(todo)-1]
			places := make([]sight, 0, len(r.seen))
			for _, s := range r.seen {
				if at := l.places[s.rank]; at >= from {
					places = append(places, sight{at, s.count})
				}
			}
			// The latest first: what it has seen need not be looked through again.
			sort.Slice(places, func(i, j int) bool { return places[j].rank < places[i].rank })
			for _, s := range places {
				at := s.rank - from
				through := at < len(seen) && seen[at] > 0
				note(at, s.count)
				switch {
				case s.rank >= l.ordered && !done[s.rank]: // on a cycle: look through it too
					todo, done[s.rank] = append(todo, s.rank), true
				case s.rank < l.ordered && !through:
					for k, count := range out.of[at] {
						seen[k] = max(seen[k], count)
					}
				}
			}
		}
		out.of = append(out.of, seen)
	}
	return out
}
