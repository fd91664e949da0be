package working_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// TestColumns: what a terminal shows of a text is neither its bytes nor its
// characters.
func TestColumns(t *testing.T) {
	for text, want := range map[string]int{"": 0, "12 V": 4, "°C": 2, "冷蔵庫": 6, "e\u0301te\u0301": 3, "a\u200db": 2, "\U0001f50b": 2, "\xff": 1} {
		if got := working.Columns(text); got != want {
			t.Errorf("%q takes %d columns, want %d", text, got, want)
		}
	}
}

func TestCut(t *testing.T) {
	for _, c := range []struct {
		text       string
		columns    int
		head, rest string
	}{
		{"", 3, "", ""}, {"abc", 3, "abc", ""}, {"abcd", 3, "abc", "d"}, {"冷蔵庫", 3, "冷", "蔵庫"}, {"冷蔵庫", 1, "冷", "蔵庫"},
		{"e\u0301te\u0301", 2, "e\u0301t", "e\u0301"}, {"abc", 0, "a", "bc"}, {"\xff\xfe\xfd", 2, "\xff\xfe", "\xfd"},
	} {
		if head, rest := working.Cut(c.text, c.columns); head != c.head || rest != c.rest {
			t.Errorf("%q at %d: %q and %q, want %q and %q", c.text, c.columns, head, rest, c.head, c.rest)
		}
	}
}

// TestWideSheets: wide characters do not make a sheet wider.
func TestWideSheets(t *testing.T) {
	long := ""
	for range 30 {
		long += "冷蔵庫"
	}
	s := working.NewSheet(long)
	s.Given("I", 5*units.Ampere, "A", long)
	s.Choose(long, long, long, working.Source{})
	for _, line := range strings.Split(s.Text(), "\n") {
		if n := working.Columns(line); n > 80 {
			t.Errorf("%d columns: %q", n, line)
		}
	}
}

func ExampleColumns() {
	fmt.Println(working.Columns("12 V"), working.Columns("冷蔵庫"))
	// Output: 4 6
}

func ExampleCut() {
	head, rest := working.Cut("refrigerator", 6)
	fmt.Println(head, rest)
	// Output: refrig erator
}
