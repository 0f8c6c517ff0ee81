// Package desk is the core's only door. This file is a minimal stand-in that
// keeps documents in memory so that the shells can be built and tried; the
// owner of this package replaces it with the real verbs.
package desk

import "encoding/json"

// Desk holds the open documents by name.
type Desk struct{ docs map[string]*document }

type document struct {
	Format string            `json:"format"`
	Job    string            `json:"job"`
	Now    map[string]string `json:"now"`
}

// New returns an empty desk.
func New() *Desk { return &Desk{docs: map[string]*document{}} }

// Call answers one request, a JSON text with a verb: open, enter, show, save
// or close.
func (d *Desk) Call(request string, data []byte) (answer string, out []byte) {
	var r struct {
		Verb, Doc, As, Path, Text string
		IDs                       []string
	}
	if json.Unmarshal([]byte(request), &r) != nil {
		return `{"ok":false,"says":"the request is not JSON"}`, nil
	}
	doc := d.docs[r.Doc]
	if r.Verb == "open" {
		doc = &document{Format: "gaugewright job", Job: r.Doc}
		if r.As == "file" && json.Unmarshal(data, doc) != nil {
			return `{"ok":false,"says":"this is not a job file"}`, nil
		}
		if doc.Now == nil {
			doc.Now = map[string]string{}
		}
		d.docs[r.Doc] = doc
		return reply(map[string]any{"ok": true, "job": doc.Job, "title": doc.Now["title"]}), nil
	}
	if doc == nil {
		return `{"ok":false,"says":"this document is not open"}`, nil
	}
	switch r.Verb {
	case "enter":
		doc.Now[r.Path] = r.Text
		return `{"ok":true}`, nil
	case "show":
		return reply(map[string]any{"ok": true, "now": doc.Now}), nil
	case "save":
		out, _ = json.Marshal(doc)
		return `{"ok":true,"name":"job.json"}`, out
	case "close":
		delete(d.docs, r.Doc)
		return `{"ok":true}`, nil
	}
	return `{"ok":false,"says":"there is no such verb"}`, nil
}

func reply(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		return `{"ok":false,"says":"the answer cannot be written"}`
	}
	return string(text)
}
