// Package picture words what figures say: heads, axes, keys, notes, and what they show for
// those who cannot see them. Package figure cuts the words to the room that there is.
package picture
