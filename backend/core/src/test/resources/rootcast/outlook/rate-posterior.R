# Posterior quantiles of a batch's rate multiplier M in each stage, for the cases of RateEvidenceTest, by R's own normal
# distribution and the midpoint rule on 1 601 x 1 601 nodes, seven prior standard deviations to each side.
#   Rscript rate-posterior.R > rate-posterior.csv       (R 4.2.2, Debian r-base-core 4.2.2.20221110-2)
#
# The model, as docs/models/rate-belief.md states it: ln M = spread * u, u = c + sqrt(0.26) e of a stage, c of the batch
# with variance 0.74; stages of 7, 9 and 10 days at 22 degrees C, where a day gives one reference-day.

cell.spread <- local({
  own <- sqrt(cumsum(c(7, 9, 10)^2)) / c(7, 9, 10)
  0.12 * own / mean(own)
})
factors <- exp(0.3 * sqrt(3) * c(-1, 0, 1))
weights <- c(1, 4, 1) / 6

# Of so many cells, at most twenty telling, with one look in a thousand at the wrong bench; the binomial is relative to
# the share that fits best.
look <- function(stage, progress, cells, reached) {
  told <- min(1, 20 / cells)
  best <- dbinom(reached, cells, reached / cells, log = TRUE)
  total <- 0
  for (i in 1:3) {
    z <- log(pmax(progress, 1e-300)) / (cell.spread[stage] * factors[i]) + qnorm(0.9)
    fit <- exp(told * (dbinom(reached, cells, pnorm(z), log = TRUE) - best))
    total <- total + weights[i] * (0.999 * fit + 0.001)
  }
  total
}
seen <- function(progress) 0.999 * dnorm(log(progress), 0, 0.08) / dnorm(0, 0, 0.08) + 0.001
seen.between <- function(before, by) {
  fit <- pnorm(log(by), 0, 0.08) - pnorm(log(before), 0, 0.08)
  best <- 2 * pnorm(log(9 / 8) / 2, 0, 0.08) - 1
  0.999 * fit + 0.001 * best
}
nothing <- function(m) 1 + 0 * m

cases <- list(
  "34 of 50" = list(0.1, function(m) look(1, m * 6 / 7, 50, 34), nothing, nothing),
  "none of 50" = list(0.1, function(m) look(1, m * 6 / 7, 50, 0), nothing, nothing),
  "15 of 18, wide prior" = list(0.25, function(m) look(1, m * 6 / 7, 18, 15), nothing, nothing),
  "roots looked for, callus never entered" = list(0.1, nothing, function(m) look(2, (14 * m - 7) / 9, 50, 20), nothing),
  "callus seen, no look" = list(0.1, function(m) seen(m * 9 / 7), nothing, nothing),
  "callus seen early" = list(0.1, function(m) seen(m * 6 / 7), nothing, nothing),
  "callus seen between looks, then roots" = list(
    0.1,
    function(m) look(1, m * 8 / 7, 50, 30) * seen.between(m * 8 / 7, m * 9 / 7),
    function(m) look(2, (16 - pmin(9, pmax(8, 7 / m))) * m / 9, 40, 10),
    nothing))

nodes <- 1601
z <- -7 + 14 * (seq_len(nodes) - 0.5) / nodes
own <- sqrt(0.26)
cat("case;stage;p10;p50;p90\n")
for (name in names(cases)) {
  spread <- cases[[name]][[1]]
  likelihood <- cases[[name]][2:4]
  m.of <- exp(spread * outer(sqrt(0.74) * z, own * z, "+"))
  averaged <- sapply(likelihood, function(f) as.vector(f(m.of) %*% dnorm(z)))
  for (stage in 1:3) {
    batch <- dnorm(z) * apply(averaged[, -stage, drop = FALSE], 1, prod)
    # By u itself, not by e, so that the mass can be summed along it.
    u <- z
    e <- outer(sqrt(0.74) * z, u, function(c, u) (u - c) / own)
    mass <- colSums(batch * dnorm(e)) * likelihood[[stage]](exp(spread * u))
    below <- cumsum(mass) / sum(mass)
    at <- u + 7 / nodes
    q <- approx(below, at, c(0.1, 0.5, 0.9), ties = "ordered")$y
    cat(name, stage - 1, sprintf("%.5f", exp(spread * q)), sep = ";")
    cat("\n")
  }
}
