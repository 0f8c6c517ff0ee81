package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func stdio(t *testing.T, in string, args ...string) (status int, out, problems string) {
	var o, p bytes.Buffer
	status = run(args, strings.NewReader(in), &o, &p)
	return status, o.String(), p.String()
}

func example(t *testing.T) string {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	return string(data)
}

func TestAssessPrintsEveryPile(t *testing.T) {
	status, out, problems := stdio(t, example(t), "assess")
	assert.Zero(t, status)
	assert.Empty(t, problems)
	assert.Equal(t, 8, strings.Count(out, `"mark"`))
	assert.Contains(t, strings.Join(strings.Fields(out), " "), `"setReading": { "says": "15.0", "unit": "MPa"`)
}

func TestABadFileIsAProblemOnStderr(t *testing.T) {
	for in, says := range map[string]string{
		"":                     "empty",
		example(t)[:900]:       "ends too early",
		"PK\x03\x04 not a job": "not a job file",
		strings.Replace(example(t), `"180 t"`, `"180 ton"`, 1): "Allowed units: t, kg",
	} {
		status, out, problems := stdio(t, in, "assess")
		assert.Equal(t, 1, status, says)
		assert.Empty(t, out, says)
		assert.Contains(t, problems, says)
	}
}

func TestFormatKeepsOurLayoutByteForByte(t *testing.T) {
	status, out, _ := stdio(t, example(t), "format")
	assert.Zero(t, status)
	assert.Equal(t, example(t), out)
}

func TestUnknownVerbs(t *testing.T) {
	for _, args := range [][]string{nil, {"dance"}, {"assess", "twice"}, {"join"}, {"join", "a", "b"}, {"compare"}, {"compare", "a", "b", "c"}, {"history", "a", "b"}} {
		status, out, problems := stdio(t, example(t), args...)
		assert.Equal(t, 2, status)
		assert.Empty(t, out)
		assert.NotEmpty(t, problems)
	}
	status, out, _ := stdio(t, "", "labels")
	assert.Zero(t, status)
	assert.Contains(t, out, `"set": "Set reading"`)
}
