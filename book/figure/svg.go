package figure

import (
	"encoding/xml"
	"hash/fnv"
	"strconv"
	"strings"
)

// A drawing is an SVG document being written.
type drawing struct {
	b  []byte
	id string // what every id in it ends in
}

// newDrawing begins the document of a figure.
func newDrawing(title, description string, height int) *drawing {
	h := fnv.New64a()
	_, _ = h.Write([]byte(title + "\n" + description)) // a hash takes all
	d := &drawing{id: strconv.FormatUint(h.Sum64(), 36)}
	w, t := decimal(pageWidth), decimal(height)
	d.add(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `, w, ` `, t, `" width="`, w, `" height="`, t,
		`" style="max-width:100%;height:auto" role="img" aria-labelledby="title-`, d.id, ` desc-`, d.id, "\">\n")
	d.add(`<title id="title-`, d.id, `">`, escape(title), "</title>\n")
	d.add(`<desc id="desc-`, d.id, `">`, escape(description), "</desc>\n")
	d.rect(box{0, 0, pageWidth, height}, fill(ground))
	d.add(`<g font-family="`, fonts, `" fill="`, ink, "\">\n")
	return d
}

// bytes ends the document and returns it.
func (d *drawing) bytes() []byte {
	d.add("</g>\n</svg>\n")
	return d.b
}

func (d *drawing) add(texts ...string) {
	for _, t := range texts {
		d.b = append(d.b, t...)
	}
}

// path draws each of the parts as a line that bends at its points.
func (d *drawing) path(parts [][]point, look string) {
	d.add(`<path d="`)
	for i, part := range parts {
		if i > 0 {
			d.add(" ")
		}
		d.add("M")
		for k, p := range part {
			if k > 0 {
				d.add(" ")
			}
			d.b = appendDecimal(d.b, p.x)
			d.b = append(d.b, ',')
			d.b = appendDecimal(d.b, p.y)
		}
	}
	d.add(`" fill="none"`, look, "/>\n")
}

// line draws the straight line from p to q.
func (d *drawing) line(p, q point, look string) {
	d.add(`<line x1="`, decimal(p.x), `" y1="`, decimal(p.y), `" x2="`, decimal(q.x), `" y2="`, decimal(q.y), `"`, look, "/>\n")
}

func (d *drawing) rect(b box, look string) {
	d.add(`<rect x="`, decimal(b.x0), `" y="`, decimal(b.y0), `" width="`, decimal(b.width()), `" height="`,
		decimal(b.height()), `"`, look, "/>\n")
}

// text writes a text with its baseline through p.
func (d *drawing) text(p point, size int, text, look string) {
	d.add(`<text x="`, decimal(p.x), `" y="`, decimal(p.y), `" font-size="`, strconv.Itoa(size), `"`, look, ">",
		escape(text), "</text>\n")
}

// Looks of texts.
const (
	middle = ` text-anchor="middle"`
	atEnd  = ` text-anchor="end"`
	bold   = ` font-weight="bold"`
	haloed = ` paint-order="stroke" stroke="` + ground + `" stroke-width="4" stroke-linejoin="round"`
)

// turned returns the look of a text that runs upwards through p.
func turned(p point) string {
	return ` transform="rotate(-90 ` + decimal(p.x) + ` ` + decimal(p.y) + `)"`
}

func fill(paint string) string { return ` fill="` + paint + `"` }

// stroke returns the look of a line. The width is in hundredths.
func stroke(colour string, width int, dash string) string {
	s := ` stroke="` + colour + `" stroke-width="` + decimal(width) + `"`
	if dash != "" {
		s += ` stroke-dasharray="` + dash + `"`
	}
	return s
}

// escape returns the text as it must stand in XML.
func escape(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a Builder takes all
	return b.String()
}

// decimal returns n hundredths with as many decimals as it needs.
func decimal(n int) string { return string(appendDecimal(nil, n)) }

// appendDecimal appends what decimal returns.
func appendDecimal(b []byte, n int) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, int64(n/px), 10)
	tenths, rest := byte(n%px/10), byte(n%10)
	switch {
	case rest > 0:
		b = append(b, '.', '0'+tenths, '0'+rest)
	case tenths > 0:
		b = append(b, '.', '0'+tenths)
	}
	return b
}
