# Posterior quantiles of a batch's rate multiplier M in each stage, for the cases of RateEvidenceTest, by R's own normal
# distribution and the midpoint rule on 161 x 161 x 161 nodes (c of the batch, own part of the first two stages), six standard
# deviations to each side; the third stage's own part, of which nothing was seen, is added in closed form.
#   Rscript rate-posterior.R > rate-posterior.csv       (R 4.2.2, Debian r-base-core 4.2.2.20221110-2)
#
# The model, as docs/models/rate-belief.md states it: ln M = spread * u, u = c + sqrt(0.26) e of a stage, c of the batch
# with variance 0.74; stages of 7, 9 and 10 days at 22 degrees C, where a day gives one reference-day; the second stage begins
# where the first ended by its own M, between the last look that found it incomplete and the entry.

cell.spread <- local({
  own <- sqrt(cumsum(c(7, 9, 10)^2)) / c(7, 9, 10)
  0.12 * own / mean(own)
})
# A cell's time to the end of a stage, with its lead from the stages before, is log-normal on the clock since sticking; the stage is this
# part of it.
part <- c(7, 9, 10) / cumsum(c(7, 9, 10))
complete <- list(part = part, spread = cell.spread, at.end = rep(qnorm(0.9), 3))
# Called complete with seven cells in ten: the first two stages end then, the third with nine in ten; how far cells lie apart on the clock
# since sticking stays.
called.days <- diff(c(0, cumsum(c(7, 9, 10)) * exp((qnorm(c(0.7, 0.7, 0.9)) - qnorm(0.9)) * cell.spread * part)))
called <- local({
  of.stage <- called.days / cumsum(called.days)
  list(part = of.stage, spread = cell.spread * part / of.stage, at.end = qnorm(c(0.7, 0.7, 0.9)))
})
factors <- exp(0.3 * sqrt(3) * c(-1, 0, 1))
weights <- c(1, 4, 1) / 6
rounds <- 2 * exp(0.5 * sqrt(3) * c(-1, 0, 1))

# Of so many cells, at most twenty telling, with one look in a thousand at the wrong bench; the binomial is relative to
# the share that fits best.
look <- function(stage, progress, cells, reached, law = complete) {
  told <- min(1, 20 / cells)
  best <- dbinom(reached, cells, reached / cells, log = TRUE)
  total <- 0
  for (i in 1:3) {
    whole <- 1 + law$part[stage] * (progress - 1)
    z <- log(pmax(whole, 1e-300)) / (law$part[stage] * law$spread[stage] * factors[i]) + law$at.end[stage]
    fit <- exp(told * (dbinom(reached, cells, pnorm(z), log = TRUE) - best))
    total <- total + weights[i] * (0.999 * fit + 0.001)
  }
  total
}
# Entered with a look before: it had ended by then.
seen <- function(progress) 0.999 * pnorm(log(progress), 0, 0.08) + 0.001
# Entered without one: somebody had come by a round earlier and found it incomplete.
seen.on.rounds <- function(m, day, days) {
  fit <- 0
  best <- 0
  for (i in 1:3) {
    share <- weights[i] / (rounds[i] / 2)
    before <- pmax(day - rounds[i], 1e-300)
    fit <- fit + share * (pnorm(log(m * day / days), 0, 0.08) - pnorm(log(m * before / days), 0, 0.08))
    best <- best + share * (2 * pnorm(log(day / before) / 2, 0, 0.08) - 1)
  }
  0.999 * fit + 0.001 * best
}

# Likelihood by M of the first and of the second stage.
cases <- list(
  "34 of 50" = list(0.1, function(m, n) look(1, m * 6 / 7, 50, 34)),
  "none of 50" = list(0.1, function(m, n) look(1, m * 6 / 7, 50, 0)),
  "15 of 18, wide prior" = list(0.25, function(m, n) look(1, m * 6 / 7, 18, 15)),
  "roots looked for, callus never entered" = list(0.1, function(m, n) look(2, pmax(14 - 7 / m, 0) * n / 9, 50, 20)),
  "callus seen, no look" = list(0.1, function(m, n) seen.on.rounds(m, 9, 7)),
  "callus seen early" = list(0.1, function(m, n) seen.on.rounds(m, 6, 7)),
  "callus seen between looks, then roots" = list(0.1, function(m, n)
    look(1, m * 8 / 7, 50, 30) * seen(m * 9 / 7) * look(2, (16 - pmin(9, pmax(8, 7 / m))) * n / 9, 40, 10)),
  "called complete at seven in ten" = list(0.1, function(m, n)
    look(1, m * 6 / called.days[1], 50, 20, called) * seen(m * 7 / called.days[1]) *
      look(2, (14 - pmin(7, pmax(6, called.days[1] / m))) * n / called.days[2], 40, 20, called)))

nodes <- 161
z <- 6 * (2 * (seq_len(nodes) - 0.5) / nodes - 1)
cat("case;stage;p10;p50;p90\n")
grid <- expand.grid(c = sqrt(0.74) * z, e = sqrt(0.26) * z, f = sqrt(0.26) * z)
prior <- with(grid, dnorm(c / sqrt(0.74)) * dnorm(e / sqrt(0.26)) * dnorm(f / sqrt(0.26)))
at <- seq(-4.5, 4.5, length.out = 2001)
for (name in names(cases)) {
  spread <- cases[[name]][[1]]
  mass <- prior * cases[[name]][[2]](exp(spread * (grid$c + grid$e)), exp(spread * (grid$c + grid$f)))
  mass <- mass / sum(mass)
  for (stage in 1:3) {
    if (stage < 3) {
      u <- if (stage == 1) grid$c + grid$e else grid$c + grid$f
      o <- order(u)
      below <- cumsum(mass[o]) - mass[o] / 2
      keep <- seq(1, length(o), by = 101)
      q <- approx(below[keep], u[o][keep], c(0.1, 0.5, 0.9), ties = "ordered")$y
    } else {
      by.c <- tapply(mass, grid$c, sum)
      below <- sapply(at, function(x) sum(by.c * pnorm((x - as.numeric(names(by.c))) / sqrt(0.26))))
      q <- approx(below, at, c(0.1, 0.5, 0.9), ties = "ordered")$y
    }
    cat(name, stage - 1, sprintf("%.5f", exp(spread * q)), sep = ";")
    cat("\n")
  }
}
