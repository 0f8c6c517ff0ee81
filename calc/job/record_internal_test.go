package job

import (
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

// The golden file holds every member, column and event of every kind of
// record, and every member of what stands outside.
func TestGoldenRecordsHoldEverything(t *testing.T) {
	data, err := os.ReadFile("../../testdata/golden/schema-" + strconv.Itoa(Schema) + ".json")
	require.NoError(t, err)
	root, complaints := document.Read(data)
	require.True(t, complaints.None())
	j := View(root)
	for _, kind := range recordKinds {
		members, columns, happened := map[string]bool{}, map[string]bool{}, map[string]bool{}
		for id, n := range root.Get("records").Members() {
			if n.Get("kind").Text() != kind.kind {
				continue
			}
			for name := range n.Members() {
				members["/"+name] = true
			}
			for _, p := range recordView(id, n).Parts() {
				for _, c := range p.Columns {
					columns[c.Name] = true
				}
				for i, e := range p.Events() {
					for name := range e.node.Members() {
						happened[e.Is+"/"+name] = true
					}
					require.Equal(t, e.Path, p.Path+"/events/"+itoa(i))
				}
			}
		}
		for _, c := range kind.columns {
			assert.True(t, columns[c.Name] || kind.kind != "drive" && c.Name == "entered", "%s %s", kind.kind, c.Name)
		}
		if kind.kind == "drive" {
			for _, e := range kind.events {
				for _, f := range e.fields {
					assert.True(t, happened[e.is+f.Pattern], "%s%s", e.is, f.Pattern)
				}
			}
		}
		for _, f := range kind.members[2:] { // after kind and note
			if f.Pattern[:3] != "/st" {
				assert.True(t, members[f.Pattern], "%s%s", kind.kind, f.Pattern)
			}
		}
	}
	assert.Len(t, j.Records("drive"), 1, "the other is struck out")
	assert.Len(t, j.RecordsOf("zero", j.Gauges()[0]), 1)
}
