package html

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"seamwarden/compiler/booklet"
)

// setPage renders the booklet and reads the page back with an HTML5 parser.
func setPage(t *testing.T, b *booklet.Booklet) *html.Node {
	t.Helper()
	out, err := Render(b)
	if err != nil {
		t.Fatal(err)
	}
	root, err := html.Parse(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	return root
}

// elements lists the elements with one of the names, in document order; with no
// name it lists all.
func elements(root *html.Node, names ...string) []*html.Node {
	var found []*html.Node
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && (len(names) == 0 || slices.Contains(names, n.Data)) {
			found = append(found, n)
		}
	}
	return found
}

func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func hasClass(n *html.Node, class string) bool {
	return slices.Contains(strings.Fields(attr(n, "class")), class)
}

func withClass(root *html.Node, class string) []*html.Node {
	return slices.DeleteFunc(elements(root), func(n *html.Node) bool { return !hasClass(n, class) })
}

func byID(root *html.Node, id string) *html.Node {
	for _, n := range elements(root) {
		if attr(n, "id") == id {
			return n
		}
	}
	return nil
}

// textOf is the text in a node, without the parts of the given classes.
func textOf(n *html.Node, without ...string) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	for _, class := range without {
		if n.Type == html.ElementNode && hasClass(n, class) {
			return ""
		}
	}
	var s strings.Builder
	for c := range n.ChildNodes() {
		s.WriteString(textOf(c, without...))
	}
	return s.String()
}

func inside(n *html.Node, names ...string) *html.Node {
	for a := range n.Ancestors() {
		if a.Type == html.ElementNode && slices.Contains(names, a.Data) {
			return a
		}
	}
	return nil
}
