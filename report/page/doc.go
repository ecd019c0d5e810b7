// Package page is what every result becomes before it is text, Markdown or HTML: blocks in
// their order. A block holds plain words; whoever renders it wraps, aligns and escapes them.
package page
