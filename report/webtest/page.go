package webtest

import (
	"encoding/base64"
	"regexp"

	"github.com/stretchr/testify/require"
)

// Open opens a page by its URL, and returns when it is loaded.
func (b *Browser) Open(url string) {
	b.t.Helper()
	b.send("POST", "/url", map[string]any{"url": url})
}

// Run runs a script in the page and returns what it returns, or what its promise becomes.
// Arguments are arguments[0] and so on; a number comes back as a float64.
func (b *Browser) Run(script string, arguments ...any) any {
	b.t.Helper()
	return b.send("POST", "/execute/sync", map[string]any{"script": script, "args": append([]any{}, arguments...)})
}

// Console are the messages of the console since it was last asked, among them errors that
// no script has caught and what a policy of the page has forbidden.
func (b *Browser) Console() []string {
	b.t.Helper()
	return b.log("browser")
}

func (b *Browser) log(kind string) (messages []string) {
	for _, entry := range b.send("POST", "/se/log", map[string]any{"type": kind}).([]any) {
		messages = append(messages, entry.(map[string]any)["message"].(string))
	}
	return messages
}

var address = regexp.MustCompile(`"url":"((?:https?|wss?|ftp|file):[^"]*)"`)

// Requests are the addresses that were asked for since it was last asked, but for that of
// the page itself. What a page carries along, in data:, is none.
func (b *Browser) Requests() (addresses []string) {
	b.t.Helper()
	page := b.Run("return location.href")
	for _, message := range b.log("performance") {
		for _, found := range address.FindAllStringSubmatch(message, -1) {
			if found[1] != page {
				addresses = append(addresses, found[1])
			}
		}
	}
	return addresses
}

// Overflowing are the elements of main that are wider than the window, or whose text is
// wider than they are.
func (b *Browser) Overflowing() any {
	b.t.Helper()
	return b.Run(`
		const wide = document.documentElement.clientWidth + 1;
		const spills = e => e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display != "inline";
		return Array.from(document.querySelectorAll("html, main *"))
			.filter(e => e.getBoundingClientRect().right > wide || spills(e))
			.map(e => e.tagName + ": " + e.textContent.trim().slice(0, 40));`)
}

var pageObject = regexp.MustCompile(`/Type\s*/Page[^s]`)

// Print prints on paper of a size in cm, and returns the number of pages.
func (b *Browser) Print(width, height float64) int {
	b.t.Helper()
	pdf := b.decode(b.send("POST", "/print", map[string]any{"page": map[string]float64{"width": width, "height": height}, "shrinkToFit": false}))
	return len(pageObject.FindAll(pdf, -1))
}

// Picture is a PNG of what the window shows.
func (b *Browser) Picture() []byte {
	b.t.Helper()
	return b.decode(b.send("GET", "/screenshot", nil))
}

func (b *Browser) decode(value any) []byte {
	data, err := base64.StdEncoding.DecodeString(value.(string))
	require.NoError(b.t, err)
	return data
}
