package figure_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/book/figure"
)

// line returns a line through n points of f at equal distances from a to b.
func line(name string, a, b float64, n int, f func(x float64) float64) figure.Line {
	l := figure.Line{Name: name}
	for i := range n {
		x := a + (b-a)*float64(i)/float64(n-1)
		l.Points = append(l.Points, figure.Point{X: x, Y: f(x)})
	}
	return l
}

// A node is an element of a drawing.
type node struct {
	name string
	attr map[string]string
	text string
}

// A place is a point of a drawing in its units.
type place struct{ x, y float64 }

// An area is a box of a drawing in its units.
type area struct{ x0, y0, x1, y1 float64 }

// meets reports whether a and b overlap by more than the last decimal.
func (a area) meets(b area) bool {
	const least = 0.005
	return a.x0+least < b.x1 && b.x0+least < a.x1 && a.y0+least < b.y1 && b.y0+least < a.y1
}

// read returns the elements of a drawing, which must be well-formed.
func read(t testing.TB, svg []byte) []node {
	t.Helper()
	var nodes []node
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nodes
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			n := node{name: token.Name.Local, attr: map[string]string{}}
			for _, a := range token.Attr {
				n.attr[a.Name.Local] = a.Value
			}
			nodes = append(nodes, n)
		case xml.CharData:
			if len(nodes) > 0 && nodes[len(nodes)-1].text == "" {
				nodes[len(nodes)-1].text = strings.TrimSuffix(string(token), "\n")
			}
		}
	}
}

// draw returns the elements of a figure without an error.
func draw(t testing.TB, f interface{ SVG() ([]byte, error) }) []node {
	t.Helper()
	svg, err := f.SVG()
	if err != nil {
		t.Fatalf("SVG() error = %v", err)
	}
	return read(t, svg)
}

func named(nodes []node, name string) []node {
	var found []node
	for _, n := range nodes {
		if n.name == name {
			found = append(found, n)
		}
	}
	return found
}

// number returns an attribute, which must be a number with two decimals or
// fewer.
func (n node) number(t testing.TB, attr string) float64 { return number(t, n.attr[attr]) }

func number(t testing.TB, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	if _, decimals, _ := strings.Cut(s, "."); len(decimals) > 2 {
		t.Errorf("%s has more than two decimals", s)
	}
	return x
}

// parts returns the parts of a path.
func (n node) parts(t testing.TB) [][]place {
	t.Helper()
	var parts [][]place
	for part := range strings.SplitSeq(strings.TrimPrefix(n.attr["d"], "M"), " M") {
		var places []place
		for pair := range strings.SplitSeq(part, " ") {
			x, y, ok := strings.Cut(pair, ",")
			if !ok {
				t.Fatalf("path %q has a pair %q", n.attr["d"], pair)
			}
			places = append(places, place{number(t, x), number(t, y)})
		}
		parts = append(parts, places)
	}
	return parts
}

// curves returns the paths of the first eight lines of a chart, in the order
// of the lines. They are the ones as wide as curveWidth says.
func curves(nodes []node, count int) []node {
	found := make([]node, count)
	colours := figure.LineColours()
	for _, n := range named(nodes, "path") {
		for i := range count {
			if n.attr["stroke"] == colours[i] && n.attr["stroke-width"] == "2.4" && found[i].name == "" {
				found[i] = n
			}
		}
	}
	return found
}

// box returns about where a text is, from estimated width, ascent and descent.
func (n node) box(t testing.TB) area {
	t.Helper()
	x, y := n.number(t, "x"), n.number(t, "y")
	size := n.number(t, "font-size")
	w := figure.TextWidth(n.text, int(size))
	if n.attr["font-weight"] == "bold" {
		w *= 1.2
	}
	switch n.attr["text-anchor"] {
	case "middle":
		x -= w / 2
	case "end":
		x -= w
	}
	a := area{x, y - 0.76*size, x + w, y + 0.24*size}
	if n.attr["transform"] != "" { // upwards through its own x and y
		cx, cy := n.number(t, "x"), n.number(t, "y")
		a = area{cx + (a.y0 - cy), cy - (a.x1 - cx), cx + (a.y1 - cy), cy - (a.x0 - cx)}
	}
	return a
}

// checkDrawing checks what must be true of every figure.
func checkDrawing(t testing.TB, svg []byte) {
	t.Helper()
	nodes := read(t, svg)
	if nodes[0].name != "svg" {
		t.Fatalf("root is %s, want svg", nodes[0].name)
	}
	if len(svg) > 64<<10 {
		t.Errorf("%d bytes, want 64 KiB at most", len(svg))
	}
	page := area{x1: 800, y1: nodes[0].number(t, "height")}
	if want := "0 0 800 " + nodes[0].attr["height"]; nodes[0].attr["viewBox"] != want {
		t.Errorf("viewBox %q, want %q", nodes[0].attr["viewBox"], want)
	}
	checkAccessible(t, nodes)
	checkNamesInside(t, nodes)
	inside := func(what string, a area) {
		if a.x0 < page.x0 || a.y0 < page.y0 || a.x1 > page.x1 || a.y1 > page.y1 {
			t.Errorf("%s at %v is not on the page %v", what, a, page)
		}
	}
	var texts []area
	for _, n := range nodes {
		switch n.name {
		case "text":
			inside(n.text, n.box(t))
			for k, other := range texts {
				if other.meets(n.box(t)) {
					t.Errorf("%q at %v covers %q at %v", n.text, n.box(t), named(nodes, "text")[k].text, other)
				}
			}
			texts = append(texts, n.box(t))
		case "path":
			for _, part := range n.parts(t) {
				for _, p := range part {
					inside("path", area{p.x, p.y, p.x, p.y})
				}
			}
		case "line":
			inside("line", area{n.number(t, "x1"), n.number(t, "y1"), n.number(t, "x2"), n.number(t, "y2")})
		case "rect":
			if n.attr["x"] != "" {
				x, y := n.number(t, "x"), n.number(t, "y")
				inside("rect", area{x, y, x + n.number(t, "width"), y + n.number(t, "height")})
			}
		}
	}
}

// checkNamesInside checks that no line runs through a name in the plot, which
// are the texts with a halo.
func checkNamesInside(t testing.TB, nodes []node) {
	t.Helper()
	const steps = 200
	for _, n := range named(nodes, "text") {
		if n.attr["paint-order"] == "" {
			continue
		}
		b := n.box(t)
		for _, path := range named(nodes, "path") {
			for _, part := range path.parts(t) {
				for i := range len(part) - 1 {
					p, q := part[i], part[i+1]
					for k := range steps + 1 {
						f := float64(k) / steps
						at := area{p.x + f*(q.x-p.x), p.y + f*(q.y-p.y), 0, 0}
						if b.x0 < at.x0 && at.x0 < b.x1 && b.y0 < at.y0 && at.y0 < b.y1 {
							t.Fatalf("a line runs through %q at %v", n.text, b)
						}
					}
				}
			}
		}
	}
}

// checkAccessible checks that a screen reader finds title and description.
func checkAccessible(t testing.TB, nodes []node) {
	t.Helper()
	if nodes[0].attr["role"] != "img" || nodes[1].name != "title" || nodes[2].name != "desc" {
		t.Fatalf("begins %s role=%q, %s, %s; want svg role=img, title, desc",
			nodes[0].name, nodes[0].attr["role"], nodes[1].name, nodes[2].name)
	}
	if got, want := nodes[0].attr["aria-labelledby"], nodes[1].attr["id"]+" "+nodes[2].attr["id"]; got != want {
		t.Errorf("aria-labelledby %q, want %q", got, want)
	}
	if nodes[1].text == "" || nodes[2].text == "" {
		t.Error("title or description is empty")
	}
}
