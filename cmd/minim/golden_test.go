package main

import (
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
)

// greyDot is a PNG of one grey pixel.
const greyDot = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg=="

// withoutPictures is a page with a dot in place of each of its pictures, whose bytes no one can read.
func withoutPictures(page string) string {
	return regexp.MustCompile(`data:image/png;base64,[^"]*`).ReplaceAllString(page, "data:image/png;base64,"+greyDot)
}

// rounded files hold no number in full precision.
var rounded = map[string]bool{".txt": true, ".md": true, ".html": true}

// TestDemoOutputs compares what compare keeps of the demo, of the batch, and the pictures
// of plan and buy, with testdata/demo.
// Other processors may round a last digit otherwise, so that the full precision
// is compared on one kind only.
func TestDemoOutputs(t *testing.T) {
	skipIfSlow(t)
	golden, err := filepath.Abs("../../testdata/demo")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	output(t, "plan", "--steps", "2", "--trials", "10000", "--out", "results")
	output(t, "buy", "--steps", "1", "--trials", "10000", "--out", "results")
	output(t, "made", "--trials", "100000", "--out", "results")
	output(t, "compare", "--out", "results", "--force")
	papers := []string{"--trials", "10000", "--date", "2026-11-28", "--out"}
	require.NoError(t, os.WriteFile("batch.toml", demo.Files.Record.Data, 0o644))
	output(t, "new", "demo")
	output(t, append([]string{"report"}, append(papers, "results/report.html")...)...)
	output(t, append([]string{"report"}, append(papers, "results/report.md")...)...)
	output(t, append([]string{"report", "demo/dye.toml", "--record", "batch.toml"}, append(papers, "results/made-report.html")...)...)
	output(t, append([]string{"sheet"}, append(papers, "results/sheet.html")...)...)
	output(t, append([]string{"sheet"}, append(papers, "results/sheet.md")...)...)
	output(t, append([]string{"label", "--by", "AK", "--batch", "7", "--use-by", "2026-12-28"}, append(papers, "results/label.html")...)...)
	output(t, append([]string{"label"}, append(papers, "results/label.md")...)...)
	for _, name := range []string{
		"compare.txt", "compare.json", "compare.md", "compare.html", "compare.csv", "plan.html", "spread.svg", "budget.svg", "vessels.svg", "result.svg", "routes.svg", "money.svg",
		"made.txt", "made.json", "made.md", "made.csv", "made.svg",
		"report.html", "report.md", "made-report.html", "sheet.html", "sheet.md", "label.html", "label.md",
	} {
		if !rounded[filepath.Ext(name)] && runtime.GOARCH != "amd64" {
			continue
		}
		got := withoutPictures(read(t, filepath.Join("results", name)))
		if *update {
			require.NoError(t, os.WriteFile(filepath.Join(golden, name), []byte(got), 0o644))
		}
		sameText(t, read(t, filepath.Join(golden, name)), got, name+" (look at it, and run with -update)")
	}
}
