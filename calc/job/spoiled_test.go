package job_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
)

const spoiledFolder = "../../testdata/spoiled/"

// Each file of the folder has one thing wrong; the table says where and which
// code. The published JSON Schema refuses the same files at the same places
// (see the tests of www).
func TestSpoiledFilesAreRefused(t *testing.T) {
	table, err := os.ReadFile(spoiledFolder + "table.tsv")
	require.NoError(t, err)
	listed := map[string]bool{"sound.json": true}
	for _, row := range strings.Split(strings.TrimSpace(string(table)), "\n") {
		if strings.HasPrefix(row, "#") {
			continue
		}
		cells := strings.Split(row, "\t")
		require.Len(t, cells, 3, row)
		name, path, code := cells[0], cells[1], cells[2]
		listed[name] = true
		found := job.Check(readFile(t, spoiledFolder+name))
		if assert.Len(t, found.List, 1, name) {
			c := found.List[0]
			assert.Equal(t, path, c.Path, name)
			assert.Equal(t, code, c.Code, name)
			assert.NotEmpty(t, c.Found, name)
			assert.NotEmpty(t, c.Allowed, name)
		}
	}
	files, err := filepath.Glob(spoiledFolder + "*.json")
	require.NoError(t, err)
	for _, f := range files {
		assert.True(t, listed[filepath.Base(f)], "%s stands in the table", f)
	}
	assert.GreaterOrEqual(t, len(listed), 41)
}

func TestTheSoundFileIsSound(t *testing.T) {
	assert.Empty(t, job.Check(readFile(t, spoiledFolder+"sound.json")).List)
}

func readFile(t *testing.T, path string) *document.Node {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	root, complaints := document.Read(data)
	require.True(t, complaints.None(), "%s: %v", path, complaints.List)
	return root
}
