package job_test

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
)

// The page for strangers and the code agree on units, factors, collections,
// members of the file and columns.
func TestFormatPage(t *testing.T) {
	data, err := os.ReadFile("../../examples/FORMAT.md")
	require.NoError(t, err)
	page := string(data)

	printed := map[string]string{}
	for _, m := range regexp.MustCompile("(?m)^\\|[^|]*\\| `([^`]+)` \\| ([0-9/]+) \\|$").FindAllStringSubmatch(page, -1) {
		assert.NotContains(t, printed, m[1])
		printed[m[1]] = m[2]
	}
	whole := func(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }
	units := 0
	for _, d := range []quantity.Dimension{quantity.Forces, quantity.Pressures, quantity.Lengths, quantity.Masses, quantity.Times, quantity.Areas,
		quantity.Moments, quantity.LineMasses, quantity.Densities, quantity.Dimensionless} {
		for _, u := range quantity.Units(d) {
			if u.Symbol == "" {
				continue
			}
			units++
			num, den := u.Factor()
			want := whole(num)
			if den != 1 {
				want += "/" + whole(den)
			}
			assert.Equal(t, want, printed[u.Symbol], u.Symbol)
		}
	}
	assert.Len(t, printed, units, "no unit that does not exist")

	collections := map[string]bool{}
	for _, f := range job.Fields() {
		steps := strings.Split(f.Pattern, "/")
		for i, s := range steps {
			if s == "*" && job.IsCollection(strings.Join(steps[:i], "/")) && steps[i-1] != "actions" {
				collections[steps[i-1]] = true
			}
		}
	}
	for name := range collections {
		assert.Contains(t, page, "`"+name+"`", name)
	}
	for name := range job.FileSchema().Get("properties").Members() {
		assert.Contains(t, page, "`"+name+"`", name)
	}
}
