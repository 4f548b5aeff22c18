# Mean of z_q, the standard normal quantile of the share of cells with which a stage is called complete, for the cases of CalledShareTest: by
# R's own normal and binomial functions, midpoint rule with 1 500 nodes over z_q and 2 001 over what the batch is like, six standard deviations
# to each side.
#   Rscript called-share.R > called-share.csv       (R 4.2.2, Debian r-base-core 4.2.2.20221110-2)
#
# The model, as docs/models/learning.md states it. Stages of 7, 9 and 10 days, cells that lie 0.12 apart on the mean of the stages, batches that
# differ in that by 0.3; the first stage is looked at, of which ln(days) is normal around ln 7 with 0.1.

cell.spread <- local({
  own <- sqrt(cumsum(c(7, 9, 10)^2)) / c(7, 9, 10)
  (0.12 * own / mean(own))[1]
})
factors <- exp(0.3 * sqrt(3) * c(-1, 0, 1))
weights <- c(1, 4, 1) / 6
call.spread <- 0.08 / cell.spread
y <- log(7) + 0.1 * 6 * (2 * (seq_len(2001) - 0.5) / 2001 - 1)
z.at <- function(gained, factor) log(gained / exp(y)) / (cell.spread * factor) + qnorm(0.9)

# A list of counts: reference-days from the stage's begin, cells, reached, reference-days to the entry.
odd <- function(p) 0.999 * p + 0.001
of.count <- function(look) qnorm((look[3] + 0.5) / (look[2] + 1))
not.yet <- function(look, zq) odd(pnorm((zq - of.count(look)) / call.spread))
at.visit <- function(look, zq) odd(pnorm((of.count(look) - zq) / call.spread))
entered <- function(looks, zq) {
  fit <- 0
  for (i in 1:3) {
    all <- 1
    for (l in looks) {
      best <- dbinom(l[3], l[2], l[3] / l[2])
      all <- all * odd(dbinom(l[3], l[2], pnorm(z.at(l[1], factors[i]))) / best)
    }
    fit <- fit + weights[i] * all
  }
  w <- fit * dnorm((y - log(7)) / 0.1)
  w <- w / sum(w)
  last <- looks[[length(looks)]]
  z <- z.at(last[1] + last[4], 1)
  sd <- sqrt(call.spread^2 + (0.3 * (z - z.at(last[1], 1)))^2)
  odd(sapply(zq, function(q) sum(w * pnorm((z - q) / sd))))
}

cases <- list(
  "nothing" = function(q) 1,
  "counted and not entered" = function(q) not.yet(c(6, 40, 20), q) * not.yet(c(7, 40, 38), q),
  "entered at a count of 29 of 40" = function(q) not.yet(c(5, 40, 20), q) * at.visit(c(6.4, 40, 29), q),
  "entered two days after 12 of 40" = function(q) {
    looks <- list(c(5.5, 40, 12, 2))
    not.yet(looks[[1]], q) * entered(looks, q)
  },
  "entered a day after 26 of 40, twice looked at" = function(q) {
    looks <- list(c(5, 40, 5, 2.2), c(6.2, 40, 26, 1))
    not.yet(looks[[1]], q) * not.yet(looks[[2]], q) * entered(looks, q)
  },
  "entered four days after none of 40" = function(q) {
    looks <- list(c(3, 40, 0, 4))
    not.yet(looks[[1]], q) * entered(looks, q)
  },
  "entered twelve days after 30 of 40" = function(q) not.yet(c(6.5, 40, 30), q))

least <- 0
most <- qnorm(0.995)
zq <- least + (most - least) * (seq_len(1500) - 0.5) / 1500
cat("case;z\n")
for (name in names(cases)) {
  p <- dnorm((zq - qnorm(0.9)) / 0.5) * cases[[name]](zq)
  cat(name, sprintf("%.5f", sum(p * zq) / sum(p)), sep = ";")
  cat("\n")
}
