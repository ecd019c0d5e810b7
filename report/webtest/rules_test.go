package webtest_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/webtest"
)

// A good page has no fault.
const goodPage = `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>good</title><main><h1>One</h1><h2>Two</h2><h3>Three</h3><h2>Two</h2>
	<p style="color: #767676">grey enough</p><p style="background: #000; color: #fff">white on black</p><img src="" alt="a picture"><svg role="img" aria-label="a drawing"><text fill="#000" y="20">in it</text></svg>
	<label>name <input></label> <label for="s">choose</label><select id="s"><option>1</option></select> <button>press</button> <a href="#s">go</a>
	<details><summary>more</summary><p style="color: #eee">folded</p></details><ul><li>item</li></ul>
	<table><thead><tr><th scope="col">head</th></tr></thead><tbody><tr><td>cell</td></tr></tbody></table></main></html>`

// Each of these parts in a page is one fault, of that rule.
var faulty = []struct{ rule, part string }{
	{"picture: <img>", `<img src="x.png">`}, {"picture: <svg>", `<svg role="img"><text y="20">in it</text></svg>`},
	{"name: <button>", `<button></button>`}, {"name: <a>", `<a href="#x"><span></span></a>`}, {"name: <details>", `<details><p>folded</p></details>`}, {"name: <fieldset>", `<fieldset>of what</fieldset>`},
	{"label: <input>", `<input type="range">`}, {"label: <select>", `<select><option>1</option></select>`}, {"label: <textarea>", `<label></label><textarea></textarea>`},
	{"role: <p>", `<p role="buton">text</p>`}, {"role: <p>", `<p aria-describedby="nothing">text</p>`}, {"role: <table>", `<table><tbody><tr><td>cell</td></tr></tbody></table>`},
	{"role: <th>", `<table><thead><tr><th>head</th></tr></thead></table>`}, {"role: <li>", `<li>item</li>`},
	{"heading: <h4>", `<h4>Four</h4>`}, {"heading: the page has 2", `<h1>Another</h1>`}, {"heading: <h2>", `<h2></h2>`}, {"main: the page has 2", `<div role="main"></div>`},
	{"contrast: <p>", `<p style="color: #777">grey</p>`}, {"contrast: <b>", `<p style="background: rgba(0, 0, 0, .5)"><b style="color: #fff">on grey</b></p>`},
	{"contrast: <p>", `<p style="opacity: .5">thin</p>`}, {"contrast: <text>", `<svg role="img" aria-label="a drawing"><text fill="#fc0" y="20">in it</text></svg>`},
	{"focus: <button>", `<button tabindex="2">first</button>`}, {"focus: <button>", `<button>one</button><button style="position: absolute; top: 0; left: 0">two</button>`},
	{"focus: <p>", `<p onclick="location.reload()">press</p>`}, {"focus: <input>", `<label>name <input style="outline: none"></label>`}, {"id: <select>", `<p id="s">twice</p>`},
}

// Our rules for pages see every fault, by itself, and none in a good page.
func TestRulesSeeFaults(t *testing.T) {
	t.Parallel()
	b := webtest.Start(t)
	path := filepath.Join(t.TempDir(), "page.html")
	look := func(page string) []string {
		require.NoError(t, os.WriteFile(path, []byte(page), 0o644))
		b.Open("file://" + path)
		return b.Faults()
	}
	assert.Empty(t, look(goodPage))
	for _, f := range faulty {
		end := len(goodPage) - len("</main></html>")
		found := look(goodPage[:end] + f.part + goodPage[end:])
		if assert.NotEmpty(t, found, f.part) {
			assert.Contains(t, found[0], f.rule, f.part)
		}
	}
	assert.Equal(t, []string{"language: the page states none", "title: the page has none", "main: the page has 0", "heading: the page has 0 of the first level"}, look(`<!DOCTYPE html><p>bare`))
}
