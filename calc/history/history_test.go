package history_test

import (
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
	assert.Equal(t, history.Origin{Who: "Ben", Device: "desk", At: "2", Why: "misread"}, o)
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
