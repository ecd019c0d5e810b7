// Package report has the pages of a result: what stands on each, and in which order. What is
// said comes from package words; a page becomes text, Markdown or HTML in package page. It
// works nothing out.
package report
