//go:build !js

// Package calc_test holds the tests that look at the whole tree of packages.
package calc_test

import (
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// order is the order of the house: a package imports only packages that stand
// before it. DEVELOPERS.md says what each is for.
var order = []string{
	"quantity", "basis", "working", "document", "table", "history", "calibration", "rig", "pile", "demand", "window", "segment", "drive", "head",
	"job", "assess", "words", "desk",
}

// testOnly are packages that tests use. They stand in no order, so that nothing
// of the product may import them.
var testOnly = []string{"published", "published/report"}

const module = "gaugewright/"

func imports(t *testing.T, pattern string) map[string][]string {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}}: {{join .Imports " "}}`, pattern).Output()
	require.NoError(t, err)
	found := map[string][]string{}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		path, list, _ := strings.Cut(line, ":")
		found[path] = strings.Fields(list)
	}
	return found
}

func TestDependenciesRunDownward(t *testing.T) {
	packages := imports(t, "./...")
	require.Greater(t, len(packages), 10)
	for path, list := range packages {
		name, ok := strings.CutPrefix(path, module+"calc/")
		if !ok || slices.Contains(testOnly, name) {
			continue // this folder itself, or what only tests use
		}
		at := slices.Index(order, name)
		require.GreaterOrEqual(t, at, 0, "%s stands in the order", name)
		for _, imported := range list {
			other, ours := strings.CutPrefix(imported, module)
			if !ours {
				assert.NotContains(t, []string{"syscall/js", "os", "time", "math/rand", "math/rand/v2", "crypto/rand", "net", "net/http", "fmt", "encoding/json", "reflect"},
					imported, "%s is pure and small", name)
				continue
			}
			below := slices.Index(order, strings.TrimPrefix(other, "calc/"))
			assert.True(t, strings.HasPrefix(other, "calc/") && below >= 0 && below < at, "%s may not import %s", name, other)
		}
	}
}

func TestShellsImportTheDeskOnly(t *testing.T) {
	shells := 0
	for path, list := range imports(t, "../wasm/...") {
		shells++
		for _, imported := range list {
			if ours, ok := strings.CutPrefix(imported, module); ok {
				assert.Equal(t, "calc/desk", ours, path)
			}
		}
	}
	assert.GreaterOrEqual(t, shells, 1)
}

// The core of the page carries neither encoding/json nor fmt, which would cost
// a tenth of a megabyte each.
func TestTheCoreStaysSmall(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "./desk").Output()
	require.NoError(t, err)
	deps := strings.Fields(string(out))
	assert.NotContains(t, deps, module+"calc/published")
	for _, heavy := range []string{"encoding/json", "fmt", "net/http", "regexp", "text/template"} {
		assert.NotContains(t, deps, heavy)
	}
}
