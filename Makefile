# One command before a change goes out: make test.

TOOL := go tool -modfile=tools/go.mod
FUZZTIME ?= 10s
COUNT ?= 6
BENCH ?= .

.PHONY: test check bench fuzz cross screens

# Everything: form, faults, arrows, all tests, with the race detector and in the browser too.
# The race detector makes reading whole corpora and drawing thousands of problems slow:
# such tests take fewer of them under -short, and all of them without the detector.
test: check
	go test -race -short ./...
	go test $$(go list ./... | grep -v internal/web)

# Form and faults, without running tests.
check:
	go vet ./...
	@unformed=$$($(TOOL) gofumpt -l .); if [ -n "$$unformed" ]; then \
		echo "not in gofumpt's form (run: $(TOOL) gofumpt -w .):"; echo "$$unformed"; exit 1; fi
	$(TOOL) staticcheck ./...
	@dead=$$($(TOOL) deadcode -test ./...); if [ -n "$$dead" ]; then \
		echo "code that nothing calls, not even a test:"; echo "$$dead"; exit 1; fi

# Every benchmark; compare two runs with: go tool -modfile=tools/go.mod benchstat OLD NEW
bench:
	go test -run '^$$' -bench '$(BENCH)' -benchmem -count $(COUNT) ./...

# Every fuzz target for a short while.
fuzz:
	@set -e; for package in $$(go list ./...); do \
		for target in $$(go test -list '^Fuzz' $$package | grep '^Fuzz' || true); do \
			echo "$$package $$target"; \
			go test -run '^$$' -fuzz "^$$target$$" -fuzztime $(FUZZTIME) $$package; \
		done; done

# The program for the other systems, without a C compiler.
cross:
	CGO_ENABLED=0 GOOS=windows GOARCH=amd64 go build -trimpath -o build/plait-windows-amd64.exe ./cmd/plait
	CGO_ENABLED=0 GOOS=darwin GOARCH=arm64 go build -trimpath -o build/plait-macos-arm64 ./cmd/plait
	CGO_ENABLED=0 GOOS=darwin GOARCH=amd64 go build -trimpath -o build/plait-macos-amd64 ./cmd/plait
	CGO_ENABLED=0 GOOS=linux GOARCH=amd64 go build -trimpath -o build/plait-linux-amd64 ./cmd/plait

# Pictures of the pages for docs/screens, taken in Chromium.
screens:
	go test ./internal/web -run TestScreens -screens $(CURDIR)/docs/screens
