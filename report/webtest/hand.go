package webtest

// Keys that have no letter, for [Browser.Keys] (WebDriver, 17.4.2).
const (
	Backspace = "\ue003"
	Tab       = "\ue004"
	Enter     = "\ue007"
	Escape    = "\ue00c"
	Left      = "\ue012"
	Up        = "\ue013"
	Right     = "\ue014"
	Down      = "\ue015"
)

// elementKey is the name under which the protocol writes an element.
const elementKey = "element-6066-11e4-a52e-4f735466cecf"

// find returns the first element of a CSS selector; that which has the focus for "".
func (b *Browser) find(selector string) string {
	b.t.Helper()
	if selector == "" {
		return b.send("GET", "/element/active", nil).(map[string]any)[elementKey].(string)
	}
	found := b.send("POST", "/element", map[string]any{"using": "css selector", "value": selector})
	return found.(map[string]any)[elementKey].(string)
}

// Click clicks the middle of the first element of a CSS selector, which must be seen there.
func (b *Browser) Click(selector string) {
	b.t.Helper()
	b.send("POST", "/element/"+b.find(selector)+"/click", nil)
}

// Keys types into the first element of a CSS selector, or with "" where the focus is.
func (b *Browser) Keys(selector, text string) {
	b.t.Helper()
	b.send("POST", "/element/"+b.find(selector)+"/value", map[string]any{"text": text})
}

// Upload chooses a file, by its absolute path, for an input of files.
func (b *Browser) Upload(selector, path string) {
	b.t.Helper()
	b.Keys(selector, path)
}

// Drag presses the pointer on the middle of the first element of a CSS selector, moves it
// by so many pixels to the right and down, and lets go.
func (b *Browser) Drag(selector string, right, down int) {
	b.t.Helper()
	move := func(origin any, x, y int) map[string]any {
		return map[string]any{"type": "pointerMove", "duration": 100, "origin": origin, "x": x, "y": y}
	}
	b.send("POST", "/actions", map[string]any{"actions": []any{map[string]any{
		"type": "pointer", "id": "mouse", "parameters": map[string]any{"pointerType": "mouse"},
		"actions": []any{
			move(map[string]string{elementKey: b.find(selector)}, 0, 0), map[string]any{"type": "pointerDown", "button": 0},
			move("pointer", right, down), map[string]any{"type": "pointerUp", "button": 0},
		},
	}}})
}
