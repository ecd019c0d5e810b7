package main

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// browser is headless Chromium, driven by the WebDriver protocol (W3C).
type browser struct {
	t       *testing.T
	session string // its URL
}

// startBrowser starts Debian's Chromium with its driver, and skips the test where they are
// not installed.
func startBrowser(t *testing.T) *browser {
	t.Helper()
	chromium, err := exec.LookPath("chromium")
	driver, err2 := exec.LookPath("chromedriver")
	if err != nil || err2 != nil {
		t.Skip("Chromium and its driver are not installed here, so that no page is opened in a browser")
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	port := listener.Addr().(*net.TCPAddr).Port
	require.NoError(t, listener.Close())
	cmd := exec.Command(driver, fmt.Sprintf("--port=%d", port))
	require.NoError(t, cmd.Start())
	b := &browser{t: t, session: fmt.Sprintf("http://127.0.0.1:%d", port)}
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	for range 100 {
		if response, err := http.Get(b.session + "/status"); err == nil {
			response.Body.Close()
			break
		}
		time.Sleep(50 * time.Millisecond)
	}
	args := []string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--user-data-dir=" + t.TempDir()}
	started := b.send("POST", "/session", map[string]any{"capabilities": map[string]any{"alwaysMatch": map[string]any{
		"goog:chromeOptions": map[string]any{"binary": chromium, "args": args},
		"goog:loggingPrefs":  map[string]string{"browser": "ALL", "performance": "ALL"},
	}}})
	b.session += "/session/" + started.(map[string]any)["sessionId"].(string)
	t.Cleanup(func() { b.send("DELETE", "", nil) })
	b.send("POST", "/url", map[string]any{"url": "about:blank"}) // in place of its own first page
	b.log("performance")
	return b
}

// send sends a command and returns its value.
func (b *browser) send(method, path string, body any) any {
	b.t.Helper()
	if body == nil {
		body = map[string]any{}
	}
	data, err := json.Marshal(body)
	require.NoError(b.t, err)
	request, err := http.NewRequest(method, b.session+path, bytes.NewReader(data))
	require.NoError(b.t, err)
	response, err := http.DefaultClient.Do(request)
	require.NoError(b.t, err)
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	require.NoError(b.t, err)
	require.Equal(b.t, http.StatusOK, response.StatusCode, "%s %s: %s", method, path, text)
	var answer struct{ Value any }
	require.NoError(b.t, json.Unmarshal(text, &answer))
	return answer.Value
}

func (b *browser) open(path string) { b.send("POST", "/url", map[string]any{"url": "file://" + path}) }

func (b *browser) run(script string) any {
	return b.send("POST", "/execute/sync", map[string]any{"script": script, "args": []any{}})
}

// log are the messages of a log.
func (b *browser) log(kind string) (messages []string) {
	for _, entry := range b.send("POST", "/se/log", map[string]any{"type": kind}).([]any) {
		messages = append(messages, entry.(map[string]any)["message"].(string))
	}
	return messages
}

var pageObject = regexp.MustCompile(`/Type\s*/Page[^s]`)

// print prints on paper of a size in cm, and returns the number of pages.
func (b *browser) print(width, height float64) int {
	encoded := b.send("POST", "/print", map[string]any{"page": map[string]float64{"width": width, "height": height}, "shrinkToFit": false})
	pdf, err := base64.StdEncoding.DecodeString(encoded.(string))
	require.NoError(b.t, err)
	return len(pageObject.FindAll(pdf, -1))
}

// overflowing are the elements that are wider than the page, or whose text is.
const overflowing = `
const wide = document.documentElement.clientWidth + 1;
return Array.from(document.querySelectorAll("main *"))
	.filter(e => e.getBoundingClientRect().right > wide || e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display != "inline" && e.clientWidth > 0)
	.map(e => e.tagName + ": " + e.textContent.slice(0, 40));`

// barStyle is how the first bar looks, and whether a printer keeps its colours.
const barStyle = `
const s = getComputedStyle(document.querySelector(".bar"));
return s.backgroundColor + " " + s.color + " " + s.printColorAdjust;`

var elsewhere = regexp.MustCompile(`"url":"(https?|wss?|ftp):[^"]*"`)

// The pages open without an error, without a script and without asking for anything
// elsewhere; at twice the size nothing is wider than the window; on A4 and on Letter they
// have the pages that they should.
func TestPapersInABrowser(t *testing.T) {
	b := startBrowser(t)
	dir := t.TempDir()
	t.Chdir(dir)
	output(t, "new", "b")
	batchOf(t, "1.06 g")
	quick := []string{"--trials", "10000", "--date", "2026-11-28", "--out"}
	for name, doc := range map[string]struct {
		args        []string
		least, most int
	}{
		"report":        {[]string{"report"}, 3, 6},
		"made":          {[]string{"report", "b/dye.toml", "--record", "record.toml"}, 3, 6},
		"sheet":         {[]string{"sheet", "--route", "three dilutions"}, 1, 1},
		"sheet-weighed": {[]string{"sheet", "--route", "diluted by weighing"}, 1, 1},
		"label":         {[]string{"label", "--by", "AK", "--batch", "7", "--use-by", "2026-12-28"}, 1, 2},
	} {
		path := filepath.Join(dir, name+".html")
		output(t, append(append(doc.args, quick...), path)...)
		b.open(path)
		assert.Equal(t, 0.0, b.run("return document.scripts.length"), name)
		for _, width := range []int{1200, 600} { // 600 px is what 200 % leaves of it
			b.send("POST", "/window/rect", map[string]any{"width": width, "height": 900})
			assert.Empty(t, b.run(overflowing), "%s at %d px", name, width)
		}
		for paper, size := range map[string][2]float64{"A4": {21, 29.7}, "Letter": {21.59, 27.94}} {
			pages := b.print(size[0], size[1])
			assert.True(t, doc.least <= pages && pages <= doc.most, "%s has %d pages on %s", name, pages, paper)
		}
		if !strings.Contains(name, "made") { // which is about a bench of the user's
			assert.Equal(t, "rgb(0, 0, 0) rgb(255, 255, 255) exact", b.run(barStyle), name)
		}
		assert.Empty(t, b.log("browser"), name)
		for _, message := range b.log("performance") {
			assert.Empty(t, elsewhere.FindString(message), name)
		}
		keep(t, b, name)
	}
}

// keep saves what a page looks like, in colour and in grey, where MINIM_SCREENSHOTS names
// a folder, for people to look at.
func keep(t *testing.T, b *browser, name string) {
	dir := os.Getenv("MINIM_SCREENSHOTS")
	if dir == "" {
		return
	}
	for end, filter := range map[string]string{"": "none", "-grey": "grayscale(1)"} {
		b.run(`document.documentElement.style.filter = "` + filter + `"`)
		data, err := base64.StdEncoding.DecodeString(b.send("GET", "/screenshot", nil).(string))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, strings.ReplaceAll(name, " ", "-")+end+".png"), data, 0o644))
	}
}
