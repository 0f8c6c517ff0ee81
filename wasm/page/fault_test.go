package main

import (
	"encoding/json"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFaultAnswerIsJSONWhateverTheCause(t *testing.T) {
	cases := []struct {
		cause any
		says  string
	}{
		{errors.New("index out of range [5]"), "index out of range [5]"},
		{"plain words", "plain words"},
		{"quote \" backslash \\ line\nend \x01", "quote \" backslash \\ line\nend \x01"},
		{"piles Ø 300", "piles Ø 300"},
		{"bad utf-8 \xff", "bad utf-8 \uFFFD"},
		{42, "the calculation stopped for an unknown reason"},
	}
	for _, c := range cases {
		text := faultAnswer(c.cause)
		var got struct {
			OK    bool   `json:"ok"`
			Fault bool   `json:"fault"`
			Says  string `json:"says"`
		}
		require.NoError(t, json.Unmarshal([]byte(text), &got), text)
		assert.False(t, got.OK)
		assert.True(t, got.Fault)
		assert.Equal(t, c.says, got.Says)
		assert.Regexp(t, `^\{"ok":false,"fault":true,`, text)
	}
}
