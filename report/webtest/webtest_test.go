package webtest_test

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/webtest"
)

// open writes a page and opens it in a browser of its own, while other tests do so too.
func open(t *testing.T, main string) *webtest.Browser {
	t.Helper()
	t.Parallel()
	b := webtest.Start(t)
	path := filepath.Join(t.TempDir(), "page.html")
	require.NoError(t, os.WriteFile(path, []byte(`<!DOCTYPE html><meta charset="utf-8"><title>page</title><main>`+main+`</main>`), 0o644))
	b.Open("file://" + path)
	return b
}

// What the hand does, with trusted events, as a user's are.
func TestHand(t *testing.T) {
	b := open(t, `
		<button id="b">press</button> <input id="i"> <input id="n"> <input id="f" type="file">
		<div id="d" style="position: absolute; left: 100px; top: 200px; width: 40px; height: 40px; background: #000"></div>
		<script>
			const pressed = [], keys = [], held = [];
			b.onclick = e => pressed.push(e.isTrusted);
			document.onkeydown = e => keys.push(e.key);
			d.onpointerdown = e => { held.push(e.clientX, e.clientY); d.setPointerCapture(e.pointerId); };
			d.onpointermove = e => { if (d.hasPointerCapture(e.pointerId)) d.style.left = e.clientX - 20 + "px", d.style.top = e.clientY - 20 + "px"; };
		</script>`)
	assert.Equal(t, []any{}, b.Run("return pressed"))
	b.Click("#b")
	assert.Equal(t, []any{true}, b.Run("return pressed"))

	b.Keys("#i", "0.5 µL"+webtest.Backspace+"g"+webtest.Left+"m"+webtest.Tab)
	assert.Equal(t, "0.5 µmg", b.Run("return i.value"))
	b.Keys("", "7")
	assert.Equal(t, "7", b.Run("return n.value"), "Tab has moved the focus")
	b.Run("keys.length = 0")
	b.Keys("#i", webtest.Enter+webtest.Escape+webtest.Up+webtest.Right+webtest.Down)
	assert.Equal(t, []any{"Enter", "Escape", "ArrowUp", "ArrowRight", "ArrowDown"}, b.Run("return keys"))

	b.Drag("#d", 70, -30)
	assert.Equal(t, []any{120.0, 220.0}, b.Run("return held"), "it is pressed in the middle")
	assert.Equal(t, []any{"170px", "170px"}, b.Run("return [d.style.left, d.style.top]"))
	b.Run("d.onpointermove({clientX: 0, clientY: 0, pointerId: 1})")
	assert.Equal(t, "170px", b.Run("return d.style.left"), "it is let go")

	path := filepath.Join(t.TempDir(), "kit.toml")
	require.NoError(t, os.WriteFile(path, []byte("name = \"größer\"\n"), 0o644))
	b.Upload("#f", path)
	assert.Equal(t, []any{"kit.toml", "name = \"größer\"\n"}, b.Run("return f.files[0].text().then(text => [f.files[0].name, text])"))
	assert.Empty(t, b.Console())
}

// A second window has a page of its own, and the first is still there.
func TestWindows(t *testing.T) {
	b := open(t, `<button onclick="window.open('about:blank').document.title = 'second'">open</button>`)
	assert.Equal(t, 1, b.Windows())
	b.Click("button")
	b.Turn(1)
	assert.Equal(t, "second", b.Run("return document.title"))
	b.Turn(0)
	assert.Equal(t, "page", b.Run("return document.title"))
	assert.Equal(t, 2, b.Windows())
}

// The size is that of the page; what does not fit into it is named.
func TestSize(t *testing.T) {
	b := open(t, `<p>short</p><p style="width: 700px">seven hundred</p><section style="width: 4rem"><p>Unbreakable-in-four-ems</p></section>`)
	for size, tooWide := range map[[2]int][]any{
		{1200, 900}: {"SECTION: Unbreakable-in-four-ems", "P: Unbreakable-in-four-ems"},
		{360, 640}:  {"HTML: pageshortseven hundredUnbreakable-in-fou", "P: seven hundred", "SECTION: Unbreakable-in-four-ems", "P: Unbreakable-in-four-ems"},
	} {
		b.Size(size[0], size[1])
		assert.Equal(t, []any{float64(size[0]), float64(size[1])}, b.Run("return [innerWidth, innerHeight]"))
		assert.Equal(t, tooWide, b.Overflowing(), size)
	}
}

// Where no browser is, a test is skipped, and fails where one is required.
func TestWithoutABrowser(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	for value, want := range map[string]string{"": "skipped", "required": "failed"} {
		t.Setenv("MINIM_BROWSER", value)
		s := &stopped{TB: t}
		func() {
			defer func() { recover() }()
			webtest.Start(s)
		}()
		assert.Equal(t, want, s.how, value)
		assert.Contains(t, s.why, "Chromium and its driver are not installed here", value)
	}
}

// stopped is a test that keeps how it was stopped.
type stopped struct {
	testing.TB
	how, why string
}

func (s *stopped) Skip(why ...any)  { s.stop("skipped", why) }
func (s *stopped) Fatal(why ...any) { s.stop("failed", why) }

func (s *stopped) stop(how string, why []any) {
	s.how, s.why = how, fmt.Sprint(why...)
	panic(how)
}

// A message of the console is seen once, and so is what a page asks for.
func TestConsoleAndRequests(t *testing.T) {
	b := open(t, `<p>quiet</p><img src="data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAAC">`)
	assert.Empty(t, b.Console())
	assert.Empty(t, b.Requests())

	b.Run(`setTimeout(() => { throw new Error("uncaught words") }); console.error("said words"); return new Promise(done => setTimeout(done, 100))`)
	messages := b.Console()
	require.Len(t, messages, 2)
	assert.Contains(t, messages[0], "said words")
	assert.Contains(t, messages[1], "uncaught words")
	assert.Empty(t, b.Console())

	b.Run(`document.body.append(Object.assign(new Image(), {src: "http://127.0.0.1:9/dot.png"})); return new Promise(done => setTimeout(done, 200))`)
	assert.Contains(t, b.Requests(), "http://127.0.0.1:9/dot.png")
	assert.NotEmpty(t, b.Console(), "that nothing answers")
	assert.Empty(t, b.Requests())
}

// On paper each break is a new page; the picture is as large as the window.
func TestPaperAndPicture(t *testing.T) {
	b := open(t, `<p style="break-after: page">one</p><p style="break-after: page">two</p><p>three</p>`)
	assert.Equal(t, 3, b.Print(21, 29.7))
	b.Size(640, 480)
	picture, err := png.DecodeConfig(bytes.NewReader(b.Picture()))
	require.NoError(t, err)
	assert.Equal(t, []int{640, 480}, []int{picture.Width, picture.Height})
}

// What is printed stands where the style sheet puts it: boxes to what a pixel is, texts on their base
// lines, in any order of scales.
func TestPlacesOnPaper(t *testing.T) {
	b := open(t, `<style>@page { margin: 0 } body { margin: 0; font: 10pt "Liberation Sans" }
		div { position: absolute; left: 20mm; top: 30mm; width: 60mm; height: 40mm; background: #eee; print-color-adjust: exact } p { break-before: page; margin: 0; font-size: 20pt }</style>
		<div>in a box µ</div><svg style="position: absolute; left: 100mm; top: 200mm; width: 50mm; height: 20mm" viewBox="0 0 25 10"><rect x="5" y="5" width="10" height="2"/></svg>
		<section style="height: 1px"></section><p>second</p>`)
	sheets := b.Paper(21, 29.7)
	require.Len(t, sheets, 2)
	assert.InDelta(t, 210, sheets[0].Width, 0.3)
	assert.InDelta(t, 297, sheets[0].Height, 0.3)
	for i, want := range []webtest.Box{{X: 20, Y: 30, Width: 60, Height: 40}, {X: 110, Y: 210, Width: 20, Height: 4}} {
		found := false
		for _, box := range sheets[0].Boxes {
			found = found || math.Abs(box.X-want.X) < 0.3 && math.Abs(box.Y-want.Y) < 0.3 && math.Abs(box.Width-want.Width) < 0.3 && math.Abs(box.Height-want.Height) < 0.3
		}
		assert.True(t, found, "%d: %v", i, sheets[0].Boxes)
	}
	words := ""
	for _, text := range sheets[0].Texts {
		words += text.Words
		assert.InDelta(t, 10, text.Size, 0.1)
		assert.InDelta(t, 33, text.Y, 0.6, "the base line lies 0.9 em below the top")
	}
	assert.Equal(t, "in a box µ", words)
	assert.InDelta(t, 20, sheets[0].Texts[0].X, 0.3)
	require.NotEmpty(t, sheets[1].Texts)
	assert.InDelta(t, 20, sheets[1].Texts[0].Size, 0.1)
}
