package benchfile

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// value returns what a node holds; depth counts the tables and lists round it.
func (b *builder) value(t *Table, key string, node *unstable.Node, at span, depth int) (*value, *Mistake) {
	if m := b.limit(at, depth); m != nil {
		return nil, m
	}
	v := &value{at: at}
	switch node.Kind {
	case unstable.String:
		v.shape, v.text = isText, string(node.Data)
	case unstable.Bool:
		v.shape, v.text = flag, string(node.Data)
	case unstable.Integer, unstable.Float:
		v.shape, v.text, v.whole = number, string(node.Data), node.Kind == unstable.Integer
	case unstable.Array:
		v.shape = isList
		return v, b.items(v, t, key, node, depth)
	case unstable.InlineTable:
		v.shape = isTable
		v.table = &Table{Name: key, file: t.file, at: at, rank: isSub, origin: byBraces, depth: depth}
		return v, b.pairs(v.table, node)
	default:
		v.shape, v.text = date, string(node.Data)
	}
	return v, nil
}

// items adds the items of a list.
func (b *builder) items(v *value, t *Table, key string, node *unstable.Node, depth int) *Mistake {
	for it := node.Children(); it.Next(); {
		item, m := b.value(t, singular(key), it.Node(), b.itemSpan(it.Node(), v.at), depth+1)
		if m != nil {
			return m
		}
		if item.shape == isTable {
			item.table.rank = isElement
		}
		v.items = append(v.items, item)
	}
	return nil
}

// pairs adds the keys and values between braces.
func (b *builder) pairs(t *Table, node *unstable.Node) *Mistake {
	for it := node.Children(); it.Next(); {
		parts, m := b.parts(it.Node())
		if m == nil {
			m = b.keyValue(t, parts, it.Node())
		}
		if m != nil {
			return m
		}
	}
	return nil
}

// itemSpan returns where an item of a list stands. The parser does not say so
// of a list in a list, which takes the place of the outer one.
func (b *builder) itemSpan(node *unstable.Node, list span) span {
	from, to := int(node.Raw.Offset), int(node.Raw.Offset+node.Raw.Length)
	switch node.Kind {
	case unstable.Array:
		return list
	case unstable.InlineTable:
		for it := node.Children(); it.Next(); {
			to = int(it.Node().Raw.Offset + it.Node().Raw.Length)
		}
		to = b.src.closing(to)
	}
	return span{from, to}
}

// singular returns the noun for one item of a list.
func singular(key string) string {
	if strings.HasSuffix(key, "ss") {
		return key
	}
	return strings.TrimSuffix(key, "s")
}
