package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
)

// The published schema is the one that the tables make. That it is a schema,
// takes every file of ours and refuses the spoiled ones is tested with a
// validator in www/tests.
func TestThePublishedSchemaIsMadeFromTheTables(t *testing.T) {
	sameFile(t, "../../www/static/job-1.schema.json", string(job.FileSchema().Stable()))
}

func TestTheSchemaKnowsEveryField(t *testing.T) {
	schema := job.FileSchema()
	assert.Equal(t, job.SchemaID, schema.Get("$id").Text())
	assert.True(t, document.Check(schema).None())
	for _, path := range []string{
		"/properties/format/const", "/$defs/now/properties/rigs/additionalProperties/properties/mass/$ref",
		"/$defs/now/properties/piles/additionalProperties/properties/workingLoad/description",
		"/$defs/driveRecord/properties/parts/additionalProperties/properties/events/items/allOf/0/then/properties/ballast",
	} {
		require.NotNil(t, schema.At(path), path)
	}
}
