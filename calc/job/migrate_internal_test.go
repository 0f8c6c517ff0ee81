package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

func TestTheTableHasOneRowForEachOlderSchema(t *testing.T) {
	require.Len(t, migrationTable, Schema-1)
	for i, m := range migrationTable {
		assert.Equal(t, i+1, m.From)
	}
}

// A made-up table shows that files are brought on step by step, from any
// schema, and that other files are left alone.
func TestFilesAreBroughtOnStepByStep(t *testing.T) {
	table := []migration{
		{1, func(root *document.Node) { root.Set("second", document.NewText("from 1")) }},
		{2, func(root *document.Node) { root.Set("third", document.NewText("from 2")) }},
	}
	for _, c := range []struct {
		from, to string
		changed  bool
	}{
		{`{"schema":1}`, `{"schema":3,"second":"from 1","third":"from 2"}`, true},
		{`{"schema":2}`, `{"schema":3,"third":"from 2"}`, true},
		{`{"schema":3}`, `{"schema":3}`, false},
		{`{"schema":9}`, `{"schema":9}`, false},
		{`{"schema":"1"}`, `{"schema":"1"}`, false},
		{`{}`, `{}`, false},
	} {
		root, complaints := document.ReadText(c.from)
		require.True(t, complaints.None())
		assert.Equal(t, c.changed, migrate(root, table), c.from)
		assert.Equal(t, c.to, root.Compact())
	}
}
