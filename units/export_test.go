package units

import "slices"

// A Row is a row of a kind's table, for the tests.
type Row struct {
	Symbol string
	Num    string
	Den    uint64
	Float  float64
	Shown  bool
	Also   []string
}

// Rows returns the units of v's kind.
func Rows(v Value) []Row {
	var rows []Row
	for _, u := range v.kind().units {
		rows = append(rows, Row{u.symbol, u.num, u.den, u.float, u.show, slices.Clone(u.also)})
	}
	return rows
}

// KindName returns the plain words and the Go type of v's kind.
func KindName(v Value) (name, typ string) { return v.kind().name, v.kind().typ }

// PlainUnit is what spellings are compared as.
func PlainUnit(s string) string { return plainUnit(s) }

// CompareSettled is the slow path of Compare, for every finite pair.
func CompareSettled(x, y float64) int { return settle(x).cmp(settle(y)) }
