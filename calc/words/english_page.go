package words

// page are the labels of the page; "page." is left out where they are handed
// on.
var page = map[string]string{
	"page.product": "Gaugewright",
	"page.set":     "Set reading", "page.never": "Never exceed", "page.stop": "stop",
}
