# Built in two stages: a static binary, then an image that holds nothing else.
FROM golang:1.26-bookworm AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -ldflags="-s -w" -o /filmbuild .

FROM scratch
COPY --from=build /filmbuild /filmbuild
USER 65532:65532
EXPOSE 8080
HEALTHCHECK NONE
ENTRYPOINT ["/filmbuild"]
CMD ["serve", "-addr", "0.0.0.0:8080"]
