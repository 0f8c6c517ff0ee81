package history_test

import (
	"fmt"
	"math/rand"
	"os"
	"runtime"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
)

// The laws are tried on a simulated office: two to five copies of one job, on
// which people edit, strike out, record, pass files on and settle choices. The
// simulation keeps the truth beside the files: for every entry the set of
// entries that its copy held when it was made.

type fact struct {
	path  string
	value string
	knows map[int]bool
}

type copyOfJob struct {
	root    *document.Node
	knows   map[int]bool // entries in this copy
	sitting int
	fresh   bool // the next edit begins a new sitting
}

type office struct {
	rnd      *rand.Rand
	facts    []fact
	lines    []string
	copies   []*copyOfJob
	sittings int
}

func newOffice(seed int64) *office {
	o := &office{rnd: rand.New(rand.NewSource(seed))}
	start := `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{},"sittings":{}}`
	for range 2 + o.rnd.Intn(4) {
		root, _ := document.ReadText(start)
		o.copies = append(o.copies, &copyOfJob{root: root, knows: map[int]bool{}, fresh: true})
	}
	return o
}

func (o *office) who(c *copyOfJob) history.Sitting {
	if c.fresh {
		o.sittings++
		c.sitting, c.fresh = o.sittings, false
	}
	// Ids in no order of time, so that nothing leans on them.
	id := fmt.Sprintf("s%02d-%d", (c.sitting*37)%97, c.sitting)
	return history.Sitting{ID: id, Who: "P" + strconv.Itoa(c.sitting%5)}
}

func (o *office) state(c *copyOfJob, path, value string) {
	names, _ := document.Split(path)
	patch := document.NewText(value)
	for _, name := range slices.Backward(names) {
		m := document.NewMap()
		m.Set(name, patch)
		patch = m
	}
	history.Enter(c.root, o.who(c), history.Change{At: strconv.Itoa(len(o.facts)), Patch: patch})
	knows := map[int]bool{}
	for k := range c.knows {
		knows[k] = true
	}
	o.facts = append(o.facts, fact{path, value, knows})
	c.knows[len(o.facts)-1] = true
}

func (o *office) record(c *copyOfJob) {
	s := o.who(c)
	line := strconv.Itoa(len(o.lines)) + " 1.0"
	o.lines = append(o.lines, line)
	at := func(n *document.Node, name string, made *document.Node) *document.Node {
		if n.Get(name) == nil {
			n.Set(name, made)
		}
		return n.Get(name)
	}
	records := at(c.root, "records", document.NewMap())
	parts := at(at(records, "r"+strconv.Itoa(o.rnd.Intn(2)), document.NewMap()), "parts", document.NewMap())
	at(at(parts, s.ID, document.NewMap()), "lines", document.NewList()).Append(document.NewText(line))
}

func (o *office) receive(c, from *copyOfJob, t *testing.T) {
	u, damage := history.Union(c.root, from.root)
	require.Empty(t, damage)
	c.root, c.fresh = u, true
	for k := range from.knows {
		c.knows[k] = true
	}
}

func (o *office) step(t *testing.T) {
	c := o.copies[o.rnd.Intn(len(o.copies))]
	switch o.rnd.Intn(10) {
	case 0, 1, 2, 3, 4:
		pile := "/piles/p" + strconv.Itoa(o.rnd.Intn(3))
		o.state(c, pile+"/"+[]string{"cutoff", "workingLoad"}[o.rnd.Intn(2)], strconv.Itoa(o.rnd.Intn(4))+" m")
	case 5:
		o.state(c, "/piles/p"+strconv.Itoa(o.rnd.Intn(3))+"/struck/why", "moved "+strconv.Itoa(o.rnd.Intn(2)))
	case 6:
		o.record(c)
	case 7, 8:
		o.receive(c, o.copies[o.rnd.Intn(len(o.copies))], t)
	case 9: // somebody settles a choice
		if choices := history.Read(c.root).Choices(); len(choices) > 0 {
			choice := choices[o.rnd.Intn(len(choices))]
			o.state(c, choice.Path, choice.Options[o.rnd.Intn(len(choice.Options))].Value.Text())
		}
	}
}

// truth says which values of each field are not superseded by an entry that
// knew them, among the entries of a set.
func (o *office) truth(known map[int]bool) map[string][]string {
	open := map[string][]string{}
	for i, f := range o.facts {
		if !known[i] {
			continue
		}
		superseded := false
		for k, g := range o.facts {
			superseded = superseded || known[k] && g.path == f.path && g.knows[i]
		}
		if !superseded && !slices.Contains(open[f.path], f.value) {
			open[f.path] = append(open[f.path], f.value)
		}
	}
	return open
}

func same(t *testing.T, seed int64, law string, a, b *document.Node) {
	if x, y := a.Compact(), b.Compact(); x != y {
		t.Fatalf("seed %d: not %s:\n%s\n%s", seed, law, x, y)
	}
}

func unite(t *testing.T, a, b *document.Node) *document.Node {
	u, damage := history.Union(a, b)
	require.Empty(t, damage)
	return u
}

// histories is how many random histories the laws are tried on: 100,000 where
// the environment asks for it (make laws), fewer in the everyday test.
func histories() int64 {
	if n, err := strconv.ParseInt(os.Getenv("GAUGEWRIGHT_HISTORIES"), 10, 64); err == nil {
		return n
	}
	if runtime.GOOS == "js" {
		return 100
	}
	return 1000
}

func TestLawsOfTheUnion(t *testing.T) {
	for seed := range histories() {
		o := newOffice(seed)
		for range 4 + o.rnd.Intn(24) {
			o.step(t)
		}
		roots := make([]*document.Node, len(o.copies))
		for i, c := range o.copies {
			roots[i] = c.root
		}
		a, b := roots[0], roots[1]
		ab := unite(t, a, b)
		same(t, seed, "commutative", ab, unite(t, b, a))
		same(t, seed, "idempotent", ab, unite(t, ab, ab))
		same(t, seed, "absorbing", ab, unite(t, ab, a))
		if len(roots) > 2 {
			c := roots[2]
			same(t, seed, "associative", unite(t, ab, c), unite(t, a, unite(t, b, c)))
		}
		all, known := a, map[int]bool{}
		for i, c := range o.copies {
			all = unite(t, all, roots[i])
			for k := range c.knows {
				known[k] = true
			}
		}
		// Every entry and every record line ever made is there.
		require.Equal(t, len(o.facts), history.Count(all), "seed %d", seed)
		lines := 0
		for _, r := range all.Get("records").Members() {
			for _, p := range r.Get("parts").Members() {
				lines += p.Get("lines").Len()
			}
		}
		require.Equal(t, len(o.lines), lines, "seed %d", seed)
		// "now" is the fold, and the open choices are those of the simulation.
		l := history.Read(all)
		require.True(t, l.Fold().Equal(all.Get("now")), "seed %d", seed)
		truth := o.truth(known)
		found := map[string]bool{}
		for _, c := range l.Choices() {
			found[c.Path] = true
			var values []string
			for _, option := range c.Options {
				if !slices.Contains(values, option.Value.Text()) {
					values = append(values, option.Value.Text())
				}
			}
			slices.Sort(values)
			want := slices.Clone(truth[c.Path])
			slices.Sort(want)
			require.Equal(t, want, values, "seed %d: %s", seed, c.Path)
		}
		for path, values := range truth {
			require.Equal(t, len(values) > 1, found[path], "seed %d: %s", seed, path)
			if len(values) == 1 {
				require.Equal(t, values[0], all.Get("now").At(path).Text(), "seed %d: %s", seed, path)
			}
		}
	}
}

func FuzzUnion(f *testing.F) {
	for seed := range int64(6) {
		o := newOffice(seed)
		for range 12 {
			o.step(&testing.T{})
		}
		f.Add(o.copies[0].root.Stable(), o.copies[1].root.Stable())
	}
	f.Fuzz(func(t *testing.T, x, y []byte) {
		a, ca := document.Read(x)
		b, cb := document.Read(y)
		if !ca.None() || !cb.None() || a.Kind() != document.Map || b.Kind() != document.Map {
			return
		}
		ab, _ := history.Union(a, b)
		ba, _ := history.Union(b, a)
		if ab.Compact() != ba.Compact() {
			t.Fatalf("not commutative:\n%s\n%s", ab.Compact(), ba.Compact())
		}
		again, _ := history.Union(ab, ab)
		if again.Compact() != ab.Compact() {
			t.Fatalf("not idempotent:\n%s\n%s", ab.Compact(), again.Compact())
		}
		// Whoever has seen everything settles every choice.
		if history.Read(ab).Damage() != nil || ab.Get("sittings").Get("last") != nil {
			return
		}
		for _, c := range history.Read(ab).Choices() {
			patch := document.NewText("settled")
			names, _ := document.Split(c.Path)
			for _, name := range slices.Backward(names) {
				m := document.NewMap()
				m.Set(name, patch)
				patch = m
			}
			history.Enter(ab, history.Sitting{ID: "last"}, history.Change{Patch: patch})
		}
		if open := history.Read(ab).Choices(); len(open) > 0 {
			t.Fatalf("not settled: %s in %s", open[0].Path, ab.Compact())
		}
	})
}
