// Package webtest opens pages in a browser for the project's tests: headless Chromium,
// driven by the WebDriver protocol (W3C) through Debian's chromium-driver.
package webtest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Browser is a browser that ends with its test. What goes wrong in it ends the test.
type Browser struct {
	t       testing.TB
	session string   // its URL
	windows []string // their handles, in the order in which they were seen
}

// patience is how long a driver or a window may take to be there.
const patience = 60 * time.Second

// Start starts a browser with an empty page. Where there is none it skips the test, unless
// MINIM_BROWSER=required.
func Start(t testing.TB) *Browser {
	t.Helper()
	chromium, err := exec.LookPath("chromium")
	driver, err2 := exec.LookPath("chromedriver")
	if err != nil || err2 != nil {
		const missing = "Chromium and its driver are not installed here, so that no page is opened in a browser"
		if os.Getenv("MINIM_BROWSER") == "required" {
			t.Fatal(missing + ", as MINIM_BROWSER=required asks for")
		}
		t.Skip(missing)
	}
	b := &Browser{t: t, session: startDriver(t, driver)}
	args := []string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--user-data-dir=" + t.TempDir()}
	started := b.send("POST", "/session", map[string]any{"capabilities": map[string]any{"alwaysMatch": map[string]any{
		"goog:chromeOptions": map[string]any{"binary": chromium, "args": args},
		"goog:loggingPrefs":  map[string]string{"browser": "ALL", "performance": "ALL"},
	}}})
	b.session += "/session/" + started.(map[string]any)["sessionId"].(string)
	t.Cleanup(func() { b.send("DELETE", "", nil) })
	b.Open("about:blank") // in place of its own first page
	b.log("performance")
	b.Turn(0)
	return b
}

// startDriver starts the driver on a free port, and returns its URL when it answers.
func startDriver(t testing.TB, driver string) string {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	port := listener.Addr().(*net.TCPAddr).Port
	require.NoError(t, listener.Close())
	cmd := exec.Command(driver, fmt.Sprintf("--port=%d", port))
	require.NoError(t, cmd.Start())
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	url := fmt.Sprintf("http://127.0.0.1:%d", port)
	waitFor(t, "an answer of "+driver, func() bool {
		response, err := http.Get(url + "/status")
		if err == nil {
			response.Body.Close()
		}
		return err == nil
	})
	return url
}

// waitFor asks again and again until there is what is waited for.
func waitFor(t testing.TB, what string, there func() bool) {
	t.Helper()
	for start := time.Now(); !there(); time.Sleep(50 * time.Millisecond) {
		if time.Since(start) > patience {
			t.Fatalf("%s is not there after %v", what, patience)
		}
	}
}

// send sends a command and returns its value.
func (b *Browser) send(method, path string, body any) any {
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
