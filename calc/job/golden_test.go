package job_test

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
)

// update writes the files that are made from the tables and the examples anew:
// go test ./calc/job -update.
var update = flag.Bool("update", false, "write the published schema and the digests anew")

const goldenFolder = "../../testdata/golden/"

// sameFile holds a file that is kept against what is made now.
func sameFile(t *testing.T, path, want string) {
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(want), 0o644))
	}
	have, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, want == string(have), "%s is not what the code makes; if that is meant, run go test ./calc/job -update", path)
}

// A file of every schema that was ever written opens, and stays so for ever.
func TestGoldenFilesOpen(t *testing.T) {
	for schema := 1; schema <= job.Schema; schema++ {
		path := goldenFolder + "schema-" + strconv.Itoa(schema) + ".json"
		root := readFile(t, path)
		was, _ := root.Get("schema").Int()
		require.Equal(t, schema, was, path)
		assert.Equal(t, schema < job.Schema, job.Migrate(root), path)
		assert.Empty(t, job.Check(root).List, path)
		assert.Empty(t, history.Read(root).Damage(), path)
		assert.False(t, history.Read(root).Reconcile(), "%s is the fold of its entries", path)
	}
}

// What we wrote and read again is written byte for byte the same.
func TestGoldenFileKeepsItsBytes(t *testing.T) {
	path := goldenFolder + "schema-" + strconv.Itoa(job.Schema) + ".json"
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(data), string(readFile(t, path).Stable()))
}

// The golden file of this schema holds every kind of thing once.
func TestGoldenFileHoldsEverything(t *testing.T) {
	root := readFile(t, goldenFolder+"schema-"+strconv.Itoa(job.Schema)+".json")
	for _, f := range job.Fields() {
		steps := strings.Split(f.Pattern, "/")[1:]
		assert.True(t, stands(root.Get("now"), steps), f.Pattern)
	}
	for _, kind := range []string{"drive", "hold", "level", "position", "zero", "comparison"} {
		assert.NotEmpty(t, job.View(root).Records(kind), kind)
	}
	for _, name := range []string{"writer", "sittings", "unread", "disputed", "signatures", "remarks", "closed"} {
		assert.NotZero(t, root.Get(name).Len(), name)
	}
}

// stands says whether something stands at a pattern.
func stands(n *document.Node, steps []string) bool {
	if len(steps) == 0 {
		return n != nil
	}
	if steps[0] == "*" || steps[0] == "#" {
		for i := range n.Len() {
			if stands(n.Item(i), steps[1:]) {
				return true
			}
		}
		return false
	}
	return stands(n.Get(steps[0]), steps[1:])
}

// The digests of every example and golden file, and of what their entries fold
// to, stand in files that the second reader in www/tests is held against too.
func TestDigestsAreKept(t *testing.T) {
	var paths []string
	for _, folder := range []string{"../../examples/", goldenFolder} {
		found, err := filepath.Glob(folder + "*.json")
		require.NoError(t, err)
		paths = append(paths, found...)
	}
	require.GreaterOrEqual(t, len(paths), 3)
	for _, path := range paths {
		root := readFile(t, path)
		log := history.Read(root)
		want := "file " + document.Digest(root) + "\nnow " + document.Digest(root.Get("now")) + "\nfold " + document.Digest(log.Fold()) + "\n"
		for _, c := range log.Choices() {
			want += "open " + strconv.Itoa(len(c.Options)) + " " + c.Path + "\n"
		}
		sameFile(t, goldenFolder+strings.TrimSuffix(filepath.Base(path), ".json")+".digest", want)
	}
}
