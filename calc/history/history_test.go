package history_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
)

func read(t *testing.T, text string) *document.Node {
	n, complaints := document.Read([]byte(text))
	require.True(t, complaints.None(), "%v", complaints)
	return n
}

var (
	first  = history.Sitting{ID: "s1", Who: "Ada", Device: "phone", On: "2026-11-02T08:00:00Z"}
	second = history.Sitting{ID: "s2", Who: "Ben", Device: "desk", On: "2026-11-02T09:00:00Z"}
)

func TestEntriesFoldBackToWhatWas(t *testing.T) {
	root := read(t, `{"now":{"piles":{"p":{"mark":"C1"}}}}`)
	start := root.Get("now").Clone()
	patches := []string{
		`{"piles":{"p":{"workingLoad":"9 kN"}}}`, `{"piles":{"p":{"workingLoad":"90 kN"}}}`,
		`{"piles":{"p":{"cutoff":"1.0 m"}}}`, `{"piles":{"q":{"mark":"C2"}}}`,
	}
	for i, p := range patches {
		history.Enter(root, first, history.Change{At: "2026-11-02T08:00:0" + string(rune('0'+i)) + "Z", Patch: read(t, p), Fold: true})
	}
	entries := root.At("/sittings/s1/entries")
	require.Equal(t, 3, entries.Len(), "the two key presses are one entry")
	assert.Equal(t, "90 kN", entries.Item(0).At("/patch/piles/p/workingLoad").Text())
	assert.Equal(t, 3, history.Count(root))

	now := root.Get("now").Clone()
	for i := entries.Len() - 1; i >= 0; i-- {
		now = document.MergePatch(now, entries.Item(i).Get("was"))
	}
	assert.True(t, now.Equal(start), "the inverses lead back to the start")
}

func TestFoldingStopsAtAnotherSitting(t *testing.T) {
	root := read(t, `{"now":{}}`)
	history.Enter(root, first, history.Change{At: "1", Patch: read(t, `{"title":"A"}`), Fold: true})
	history.Enter(root, second, history.Change{At: "2", Patch: read(t, `{"title":"AB"}`), Fold: true, Why: "misread"})
	assert.Equal(t, 1, root.At("/sittings/s1/entries").Len())
	assert.Equal(t, 1, root.At("/sittings/s2/entries").Len())
	seen, _ := root.At("/sittings/s2/seen/s1").Int()
	assert.Equal(t, 1, seen, "the second sitting had seen one entry of the first")

	o, ok := history.LastOf(root, "/title")
	assert.True(t, ok)
	assert.Equal(t, history.Ref{Sitting: "s2", S: 0}, o.Ref)
	assert.Equal(t, []string{"Ben", "desk", "2", "misread", "AB"}, []string{o.Who, o.Device, o.At, o.Why, o.Value.Text()})
	_, ok = history.LastOf(root, "/datum")
	assert.False(t, ok)
}

func TestAChangeOfSeveralValuesNeverFolds(t *testing.T) {
	root := read(t, `{"now":{}}`)
	for range 2 {
		history.Enter(root, first, history.Change{At: "1", Patch: read(t, `{"rigs":{"r":{"name":"A","mass":"1 t"}}}`), Fold: true})
	}
	assert.Equal(t, 2, history.Count(root))
}

func TestUndoIsAnEntry(t *testing.T) {
	root := read(t, `{"now":{}}`)
	change := func(patch string) {
		history.Enter(root, first, history.Change{At: "1", Patch: read(t, patch)})
	}
	undo := func(s int) {
		patch := history.Read(root).Undo(history.Ref{Sitting: "s1", S: s}, pile)
		require.NotNil(t, patch)
		history.Enter(root, first, history.Change{At: "2", Patch: patch, Why: "undo"})
	}
	change(`{"piles":{"p":{"mark":"C1"}}}`)
	change(`{"piles":{"p":{"cutoff":"1.0 m"}}}`)
	change(`{"piles":{"p":{"cutoff":"2.0 m"}}}`)
	undo(2)
	assert.Equal(t, "1.0 m", root.At("/now/piles/p/cutoff").Text())
	undo(1)
	assert.Equal(t, "", root.At("/now/piles/p/cutoff").Text())
	assert.NotNil(t, root.At("/now/piles/p/cutoff"), "blank, not deleted")
	undo(0)
	assert.Equal(t, "undone", root.At("/now/piles/p/struck/why").Text(), "a thing is struck out")
	assert.Nil(t, root.At("/now/piles/struck"), "a collection is not")
	assert.Equal(t, 6, history.Count(root))
	assert.True(t, history.Read(root).Fold().Equal(root.Get("now")))

	// What somebody changed since is left alone.
	change(`{"title":"A"}`)
	change(`{"title":"B"}`)
	assert.Nil(t, history.Read(root).Undo(history.Ref{Sitting: "s1", S: 6}, pile))
	assert.Nil(t, history.Read(root).Undo(history.Ref{Sitting: "nobody", S: 0}, pile))

	// A strike is taken back by blanking its reason; a map that is no thing has
	// its fields blanked.
	change(`{"piles":{"q":{"mark":"C2"}}}`)
	change(`{"piles":{"q":{"struck":{"why":"moved"}}}}`)
	undo(9)
	assert.Equal(t, `{"why":""}`, root.At("/now/piles/q/struck").Compact())
	change(`{"piles":{"q":{"hold":{"time":"30 s"}}}}`)
	undo(11)
	assert.Equal(t, `{"time":""}`, root.At("/now/piles/q/hold").Compact())
}

// pile says which paths are things in these tests.
func pile(path string) bool {
	rest, ok := strings.CutPrefix(path, "/piles/")
	return ok && !strings.Contains(rest, "/")
}

func TestAChangeByHandGetsAHistory(t *testing.T) {
	root := read(t, `{"now":{}}`)
	history.Enter(root, first, history.Change{At: "1", Patch: read(t, `{"title":"A","datum":"x","piles":{"p":{"mark":"C1"}}}`)})
	assert.False(t, history.Read(root).Reconcile())

	byHand := func() *document.Node {
		r := root.Clone()
		r.Get("now").Set("title", document.NewText("B"))
		r.Get("now").Remove("datum")
		r.At("/now/piles/p").Set("cutoff", document.NewText("1.0 m"))
		return r
	}
	changed := byHand()
	require.True(t, history.Read(changed).Reconcile())
	assert.False(t, history.Read(changed).Reconcile())
	assert.Equal(t, "B", changed.At("/now/title").Text())
	assert.Equal(t, "", changed.At("/now/datum").Text())
	o, ok := history.LastOf(changed, "/piles/p/cutoff")
	require.True(t, ok)
	assert.Equal(t, history.UnknownHand, o.Who)

	again := byHand()
	history.Read(again).Reconcile()
	u, damage := history.Union(changed, again)
	assert.Empty(t, damage)
	assert.True(t, u.Get("sittings").Equal(changed.Get("sittings")), "the same change by hand is one sitting")
}

func TestTheHistoryOfAValueAndOfTwoStates(t *testing.T) {
	root := read(t, `{"now":{}}`)
	for i, v := range []string{"1.0 m", "2.0 m", "3.0 m"} {
		history.Enter(root, first, history.Change{At: string(rune('1' + i)), Patch: read(t, `{"piles":{"p":{"cutoff":"`+v+`"}}}`)})
	}
	l := history.Read(root)
	trace := l.Trace("/piles/p/cutoff")
	require.Len(t, trace, 3)
	assert.Equal(t, "2.0 m", trace[1].Value.Text())
	assert.Len(t, l.Trace("/piles/p"), 3)

	differences := history.Compare(l.Until("1"), l.Until("3"))
	require.Len(t, differences, 1)
	assert.Equal(t, "/piles/p/cutoff", differences[0].Path)
	assert.Equal(t, "1.0 m", differences[0].Before.Text())
	assert.Equal(t, "3.0 m", differences[0].After.Text())
	assert.Empty(t, history.Compare(root.Get("now"), l.Until("9")))
}

func TestDamageIsSaid(t *testing.T) {
	entry := func(s, patch string) string { return `{"s":` + s + `,"at":"1","patch":` + patch + `,"was":{}}` }
	for code, text := range map[string]string{
		history.MissingEntry: `"a":{"seen":{},"entries":[` + entry("0", `{"x":"1"}`) + `,` + entry("2", `{"x":"2"}`) + `]}`,
		history.TwoEntries:   `"a":{"seen":{},"entries":[` + entry("0", `{"x":"1"}`) + `,` + entry("0", `{"x":"2"}`) + `]}`,
		history.BeyondEnd:    `"a":{"seen":{"b":5},"entries":[` + entry("0", `{"x":"1"}`) + `]},"b":{"seen":{},"entries":[` + entry("0", `{"x":"2"}`) + `]}`,
		history.Cycle: `"a":{"seen":{"b":1},"entries":[` + entry("0", `{"x":"1"}`) + `]},"b":{"seen":{"c":1},"entries":[` + entry("0", `{"x":"2"}`) +
			`]},"c":{"seen":{"a":1},"entries":[` + entry("0", `{"x":"3"}`) + `]}`,
	} {
		l := history.Read(read(t, `{"now":{},"sittings":{`+text+`}}`))
		require.NotEmpty(t, l.Damage(), code)
		assert.Equal(t, code, l.Damage()[0].Code)
		assert.NotEmpty(t, l.Damage()[0].Args)
		l.Fold() // goes on
	}
}

func TestTwoEntriesUnderOneNumberAreBothKept(t *testing.T) {
	a := read(t, `{"job":"j","now":{},"sittings":{"s":{"who":"A","seen":{},"entries":[{"s":0,"patch":{"x":"1"},"was":{}}]}}}`)
	b := read(t, `{"job":"j","now":{},"sittings":{"s":{"who":"A","seen":{},"entries":[{"s":0,"patch":{"x":"2"},"was":{}}]}}}`)
	ab, damage := history.Union(a, b)
	require.Len(t, damage, 1)
	assert.Equal(t, history.TwoEntries, damage[0].Code)
	assert.Len(t, damage[0].Kept, 2)
	ba, _ := history.Union(b, a)
	assert.Equal(t, string(ab.Stable()), string(ba.Stable()))
	text := ab.Compact()
	assert.Contains(t, text, `"x":"1"`)
	assert.Contains(t, text, `"x":"2"`)
	again, _ := history.Union(ab, b)
	assert.Equal(t, string(ab.Stable()), string(again.Stable()))
}

func TestRecordLinesAreNeverLost(t *testing.T) {
	a := read(t, `{"job":"j","now":{},"sittings":{},"records":{"d":{"kind":"drive","pile":"p","parts":{"s1":{"columns":"s m","lines":["0 1.0","9 2.0"]}}}}}`)
	b := read(t, `{"job":"j","now":{},"sittings":{},"records":{"d":{"kind":"drive","pile":"p","parts":{"s1":{"columns":"s m","lines":["0 1.0"]},"s2":{"columns":"s m","lines":["20 3.0"]}}}}}`)
	u, damage := history.Union(a, b)
	assert.Empty(t, damage)
	assert.Equal(t, `["0 1.0","9 2.0"]`, u.At("/records/d/parts/s1/lines").Compact())
	assert.Equal(t, `["20 3.0"]`, u.At("/records/d/parts/s2/lines").Compact())

	b.At("/records/d/parts/s1/lines").Append(document.NewText("9 2.5"))
	u, damage = history.Union(a, b)
	require.Len(t, damage, 1)
	assert.Equal(t, history.TwoRecords, damage[0].Code)
	assert.Contains(t, u.Compact(), "9 2.0")
	assert.Contains(t, u.Compact(), "9 2.5")
}
