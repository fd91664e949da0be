module example.com/drawbar

go 1.26.0

require (
	github.com/google/go-cmp v0.7.0
	github.com/shopspring/decimal v1.4.0
	github.com/yuin/goldmark v1.8.7
	golang.org/x/exp v0.0.0-20261113113407-e3970619a1a4
)
