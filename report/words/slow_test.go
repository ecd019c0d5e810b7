package words

import "testing"

// thorough is false under the race detector.
var thorough = true

// skipIfSlow leaves out under the race detector what takes long on one processor.
func skipIfSlow(t *testing.T) {
	t.Helper()
	if !thorough {
		t.Skip("run without the race detector")
	}
}
